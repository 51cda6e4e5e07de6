// A game as its PGN tells it: tags, moves with their variations, comments and
// NAGs, result.
//
// A GameTree is a plain value; const use is safe from any number of threads.
// Moves are nodes in one vector. Each line (the main line and each variation)
// begins with a node that has no move, its start: what the author says before
// a line's first move stands there. Node 0 is the start of the main line.
//
//   1. e4 $1 {King's pawn.} (1. d4 d5) 1... e5
//
//   node 0 start    next 1
//   node 1 e4       next 5, nags 1, comments "King's pawn.", variations 2
//   node 2 start    parent 0 (where the line leaves the game), next 3
//   node 3 d4       parent 2, next 4
//   node 4 d5       parent 3
//   node 5 e5       parent 1
//
// A variation hangs on the move that it would replace; its start's parent is
// that move's parent. All moves are legal where they stand; who builds a tree
// by hand sees to that. A pass ("--") is the null move.
//
//   GameTree tree;
//   NodeIndex e4 = tree.Append(0, move);            // main line
//   NodeIndex line = tree.AddVariation(e4);         // instead of e4
//   tree.Append(line, other);
//   WalkTree(tree, [](const TreeStep& step) {       // every position, in the
//     Use(step.node, step.after);                   // order of the text
//   });
#ifndef ASSAY_NOTATION_PGN_TREE_H_
#define ASSAY_NOTATION_PGN_TREE_H_

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "assay/base/problem.h"
#include "assay/notation/pgn_text.h"
#include "assay/rules/position.h"

namespace assay {

using NodeIndex = std::int32_t;
inline constexpr NodeIndex kNoNode = -1;

struct PgnTag {
  std::string name;
  std::string value;  // without quotes, \" and \\ resolved
};

struct PgnComment {
  enum class Kind : std::uint8_t {
    kBraces,    // { to the next } (standard, 5)
    kToLineEnd  // ; to the end of the line
  };
  std::string text;  // every byte between the signs, line ends included
  Kind kind = Kind::kBraces;
  // How many variations of the node come before the comment: 0 where it
  // follows the move itself.
  std::uint32_t after_variations = 0;
};

struct GameNode {
  Move move;                 // null at a line's start, and for a pass
  bool starts_line = false;  // has no move: the start of a line
  NodeIndex parent = kNoNode;
  NodeIndex next = kNoNode;           // the following move of the line
  std::vector<NodeIndex> variations;  // starts of lines instead of this move
  std::vector<std::uint8_t> nags;     // suffix marks such as "!?" among them
  std::vector<PgnComment> comments;
};

enum class GameResult : std::uint8_t {
  kUnknown,
  kWhiteWins,
  kBlackWins,
  kDraw
};

// "*", "1-0", "0-1", "1/2-1/2".
std::string_view ToString(GameResult result);
// The result of one of these four texts; nothing for any other.
std::optional<GameResult> ParseGameResult(std::string_view text);

struct GameTree {
  GameTree();

  std::vector<PgnTag> tags;         // in the file's order
  std::vector<PgnComment> heading;  // comments before the first tag
  std::vector<PgnComment> closing;  // comments after the terminator
  Position start;
  std::vector<GameNode> nodes;  // never empty
  GameResult result = GameResult::kUnknown;
  // Of all texts of the game together.
  PgnEncoding encoding = PgnEncoding::kUtf8;
  // What a reader found not as the standard wants it without losing anything
  // by it; the fields are those of pgn_reader.h. No part of equality.
  std::vector<Problem> remarks;

  // The value of the first tag of the name; null where there is none.
  const std::string* Tag(std::string_view name) const;
  // Sets the first tag of the name, or adds one at the end.
  void SetTag(std::string_view name, std::string_view value);

  // Adds a move after the last node of a line (one whose next is kNoNode).
  NodeIndex Append(NodeIndex last, Move move);
  // Adds an empty variation to a move; gives the line's start.
  NodeIndex AddVariation(NodeIndex node);

  // The main line's moves, in order.
  std::vector<NodeIndex> MainLine() const;
  // The moves that lead to the node, itself last, passes included.
  std::vector<Move> MovesTo(NodeIndex node) const;
  // The position after the node's move; at a line's start, before its first.
  Position PositionAfter(NodeIndex node) const;
  // The position after so many plies of the main line, 0 being the start;
  // nothing where the game has fewer or the number is negative.
  std::optional<Position> PositionAtPly(int ply) const;
};

// Same tags, comments, moves, variations, NAGs, result and start position.
bool operator==(const PgnTag& a, const PgnTag& b);
bool operator==(const PgnComment& a, const PgnComment& b);
bool operator==(const GameNode& a, const GameNode& b);
bool operator==(const GameTree& a, const GameTree& b);
inline bool operator!=(const GameTree& a, const GameTree& b) {
  return !(a == b);
}

// One node of a walk. The references live as long as the call.
struct TreeStep {
  NodeIndex index = 0;
  const GameNode& node;
  const Position& before;  // equal to `after` at a line's start
  const Position& after;
  int depth = 0;  // 0 in the main line
  int ply = 0;    // plies from the game's start; 0 at node 0
};

// Calls back for every node, starts of lines included, in the order of the
// text: a move, its variations, the next move. Plays each move once.
void WalkTree(const GameTree& tree,
              const std::function<void(const TreeStep&)>& visit);

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_TREE_H_
