// Rows of positions of our own with the plans that a player names in them
// (common practice, no source), for the kinds of plans made with pawns.
#ifndef ASSAY_TESTS_PLANS_PAWN_PLANS_H_
#define ASSAY_TESTS_PLANS_PAWN_PLANS_H_

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "assay/plans/draft.h"
#include "tests/support/from_pieces.h"
#include "tests/support/rows.h"

namespace assay {
namespace testing_support {

struct PlanRow : Row {
  const char* pieces;
  Side side;
  // "b2b4 b4b5": of one draft; "f6** f7f5": whatever square the first goes to.
  // "" where there must be no draft at all, "not g2g4" where none may hold it.
  const char* moves;
  const char* targets;  // "c6"
};

inline std::string Text(const std::vector<Move>& moves) {
  std::string text;
  for (const Move move : moves) {
    if (!text.empty()) text += ' ';
    text += ToString(move.from()) + ToString(move.to());
  }
  return text;
}

inline std::string Text(const SquareList& squares) {
  std::string text;
  for (const Square square : squares) {
    if (!text.empty()) text += ' ';
    text += ToString(square);
  }
  return text;
}

inline bool Matches(const std::string& pattern, const std::string& text) {
  if (pattern.size() != text.size()) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (pattern[i] != '*' && pattern[i] != text[i]) return false;
  }
  return true;
}

// The same moves or squares from the other side: ranks reversed.
inline std::string Flipped(std::string text) {
  for (std::size_t i = 1; i < text.size(); ++i) {
    const bool rank = text[i] >= '1' && text[i] <= '8';
    if (rank) text[i] = static_cast<char>('1' + '8' - text[i]);
  }
  return text;
}

using Finder = void (*)(const Outlook&, std::vector<Draft>&);

inline std::vector<Draft> DraftsOf(Finder finder, const Position& position,
                                   Side side) {
  static const auto& weights = *new Weights();
  const Facts facts(position);
  const Outlook outlook = {position, facts, weights, side};
  std::vector<Draft> drafts;
  finder(outlook, drafts);
  return drafts;
}

inline void ExpectRow(Finder finder, PlanKind kind, const Position& position,
                      Side side, std::string moves,
                      const std::string& targets) {
  const std::vector<Draft> drafts = DraftsOf(finder, position, side);
  EXPECT_LE(drafts.size(), 3u);
  std::string all;
  bool found = false;
  const bool forbidden = moves.rfind("not ", 0) == 0;
  if (forbidden) moves = moves.substr(4);
  for (const Draft& draft : drafts) {
    const std::string text = Text(draft.moves);
    all += "\n  " + text + " -> " + Text(draft.targets);
    EXPECT_EQ(draft.kind, kind);
    EXPECT_TRUE(PlayAlone(position, side, draft.moves).has_value()) << text;
    EXPECT_GE(draft.moves.size(), 1u);
    EXPECT_LE(draft.moves.size(), 5u) << text;
    EXPECT_FALSE(draft.claims.empty()) << text;
    if (forbidden) {
      EXPECT_EQ(text.find(moves), std::string::npos) << text;
    } else {
      found = found || (Matches(moves, text) && Text(draft.targets) == targets);
    }
  }
  if (forbidden) return;
  if (moves.empty()) {
    EXPECT_TRUE(drafts.empty()) << all;
  } else {
    EXPECT_TRUE(found) << "none is " << moves << " -> " << targets << all;
  }
}

// The row as it stands, and with the colours swapped.
inline void ExpectPlan(Finder finder, PlanKind kind, const PlanRow& row) {
  const Position position = FromPieces(row.pieces);
  ExpectRow(finder, kind, position, row.side, row.moves, row.targets);
  SCOPED_TRACE("with the colours swapped");
  const std::string moves = row.moves;
  const bool forbidden = moves.rfind("not ", 0) == 0;
  const std::string flipped =
      forbidden ? "not " + Flipped(moves.substr(4)) : Flipped(moves);
  ExpectRow(finder, kind, SwapColours(position), Other(row.side), flipped,
            Flipped(row.targets));
}

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_PLANS_PAWN_PLANS_H_
