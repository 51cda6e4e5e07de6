// Positions are not kept in the tree: they are played when asked for, once a
// node in a walk, with a stack of the lines still to come instead of recursion.
#include "assay/notation/pgn_tree.h"

#include <algorithm>
#include <tuple>

namespace assay {
namespace {

constexpr std::string_view kResults[4] = {"*", "1-0", "0-1", "1/2-1/2"};

GameNode LineStart(NodeIndex parent) {
  GameNode node;
  node.starts_line = true;
  node.parent = parent;
  return node;
}

}  // namespace

std::string_view ToString(GameResult result) {
  return kResults[static_cast<int>(result)];
}

std::optional<GameResult> ParseGameResult(std::string_view text) {
  for (int i = 0; i < 4; ++i) {
    if (text == kResults[i]) return static_cast<GameResult>(i);
  }
  return std::nullopt;
}

GameTree::GameTree() : start(Position::Initial()), nodes{LineStart(kNoNode)} {}

const std::string* GameTree::Tag(std::string_view name) const {
  for (const PgnTag& tag : tags) {
    if (tag.name == name) return &tag.value;
  }
  return nullptr;
}

void GameTree::SetTag(std::string_view name, std::string_view value) {
  for (PgnTag& tag : tags) {
    if (tag.name == name) {
      tag.value = value;
      return;
    }
  }
  tags.push_back({std::string(name), std::string(value)});
}

NodeIndex GameTree::Append(NodeIndex last, Move move) {
  const auto index = static_cast<NodeIndex>(nodes.size());
  GameNode& node = nodes.emplace_back();
  node.move = move;
  node.parent = last;
  nodes[last].next = index;
  return index;
}

NodeIndex GameTree::AddVariation(NodeIndex node) {
  const auto index = static_cast<NodeIndex>(nodes.size());
  nodes.push_back(LineStart(nodes[node].parent));
  nodes[node].variations.push_back(index);
  return index;
}

std::vector<NodeIndex> GameTree::MainLine() const {
  std::vector<NodeIndex> line;
  for (NodeIndex i = nodes[0].next; i != kNoNode; i = nodes[i].next) {
    line.push_back(i);
  }
  return line;
}

std::vector<Move> GameTree::MovesTo(NodeIndex node) const {
  std::vector<Move> moves;
  for (NodeIndex i = node; i != kNoNode; i = nodes[i].parent) {
    if (!nodes[i].starts_line) moves.push_back(nodes[i].move);
  }
  std::reverse(moves.begin(), moves.end());
  return moves;
}

Position GameTree::PositionAfter(NodeIndex node) const {
  Position position = start;
  for (const Move move : MovesTo(node)) {
    position = position.AfterStep(move);
  }
  return position;
}

std::optional<Position> GameTree::PositionAtPly(int ply) const {
  if (ply < 0) return std::nullopt;
  Position position = start;
  NodeIndex node = 0;
  for (int i = 0; i < ply; ++i) {
    node = nodes[node].next;
    if (node == kNoNode) return std::nullopt;
    position = position.AfterStep(nodes[node].move);
  }
  return position;
}

bool operator==(const PgnTag& a, const PgnTag& b) {
  return a.name == b.name && a.value == b.value;
}

bool operator==(const PgnComment& a, const PgnComment& b) {
  return a.text == b.text && a.kind == b.kind &&
         a.after_variations == b.after_variations;
}

bool operator==(const GameNode& a, const GameNode& b) {
  return std::tie(a.move, a.starts_line, a.parent, a.next, a.variations, a.nags,
                  a.comments) == std::tie(b.move, b.starts_line, b.parent,
                                          b.next, b.variations, b.nags,
                                          b.comments);
}

bool operator==(const GameTree& a, const GameTree& b) {
  return std::tie(a.tags, a.heading, a.closing, a.start, a.nodes, a.result,
                  a.encoding) == std::tie(b.tags, b.heading, b.closing, b.start,
                                          b.nodes, b.result, b.encoding);
}

void WalkTree(const GameTree& tree,
              const std::function<void(const TreeStep&)>& visit) {
  struct Pending {
    NodeIndex index;
    Position before;
    int depth;
    int ply;
  };
  std::vector<Pending> stack = {{0, tree.start, 0, 0}};
  while (!stack.empty()) {
    const Pending at = stack.back();
    stack.pop_back();
    const GameNode& node = tree.nodes[at.index];
    const Position after =
        node.starts_line ? at.before : at.before.AfterStep(node.move);
    visit({at.index, node, at.before, after, at.depth, at.ply});
    if (node.next != kNoNode) {
      stack.push_back({node.next, after, at.depth, at.ply + 1});
    }
    for (auto i = node.variations.rbegin(); i != node.variations.rend(); ++i) {
      stack.push_back({*i, at.before, at.depth + 1, at.ply - 1});
    }
  }
}

}  // namespace assay
