#include "assay/lesson/place.h"

#include "assay/explain/line_text.h"
#include "assay/notation/pgn_text.h"
#include "assay/notation/san.h"

namespace assay {
namespace {

// Of an order of moves that a reader is shown: a whole opening, hardly more.
constexpr std::size_t kMostShownPlies = 16;

bool Known(const std::string* value) {
  return value != nullptr && !value->empty() && *value != "?";
}

bool InVariation(const GameTree& tree, NodeIndex node) {
  for (NodeIndex i = node; i != kNoNode; i = tree.nodes[i].parent) {
    if (tree.nodes[i].starts_line && i != 0) return true;
  }
  return false;
}

}  // namespace

std::vector<std::string> PathTo(const GameTree& tree, NodeIndex node) {
  std::vector<std::string> path;
  Position at = tree.start;
  for (const Move move : tree.MovesTo(node)) {
    path.push_back(move.is_null() ? "--" : ToSan(at, move));
    at = at.AfterStep(move);
  }
  return path;
}

namespace {

Message AfterSaid(const GameTree& tree, NodeIndex node) {
  const std::vector<Move> moves = tree.MovesTo(node);
  if (moves.empty()) return Say("place.start");
  Position before = tree.start;
  for (std::size_t i = 0; i + 1 < moves.size(); ++i) {
    before = before.AfterStep(moves[i]);
  }
  return Say("place.after", NumberedMove(before, moves.back()),
             InVariation(tree, node));
}

}  // namespace

std::string AfterText(const GameTree& tree, NodeIndex node,
                      const Catalogue& words) {
  return words.Text(AfterSaid(tree, node));
}

std::string PlaceText(std::uint32_t game, const GameTree& tree, NodeIndex node,
                      const Catalogue& words) {
  return words.Text(
      Say("place.game", static_cast<int>(game) + 1, AfterSaid(tree, node)));
}

std::string OrderText(const GameTree& tree, NodeIndex node) {
  std::vector<Move> moves = tree.MovesTo(node);
  Position from = tree.start;
  std::string text;
  if (moves.size() > kMostShownPlies) {
    const std::size_t left_out = moves.size() - kMostShownPlies;
    for (std::size_t i = 0; i < left_out; ++i) {
      from = from.AfterStep(moves[i]);
    }
    moves.erase(moves.begin(),
                moves.begin() + static_cast<std::ptrdiff_t>(left_out));
    text = "... ";
  }
  return text + LineText(from, moves);
}

std::string GameTitle(const GameTree& tree) {
  const std::string* white = tree.Tag("White");
  const std::string* black = tree.Tag("Black");
  const std::string* event = tree.Tag("Event");
  std::string title;
  if (Known(white) && Known(black)) {
    title = *white + " - " + *black;
  } else if (Known(event)) {
    title = *event;
  }
  return ToUtf8(title, tree.encoding);
}

}  // namespace assay
