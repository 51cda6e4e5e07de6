// Tables for finders of plans: a position, a side, and the draft that must be
// among those found, or that none must be.
#ifndef ASSAY_TESTS_SUPPORT_DRAFTS_H_
#define ASSAY_TESTS_SUPPORT_DRAFTS_H_

#include <cstdint>
#include <string>
#include <vector>

#include "assay/notation/san.h"
#include "assay/plans/draft.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace testing_support {

using Finder = void (*)(const Outlook&, std::vector<Draft>&);

struct DraftRow : Row {
  const char* fen;
  Side side;
  const char* moves;  // of one draft, in SAN; "": no draft at all
  Square target;      // its first
};

inline std::vector<Draft> DraftsOf(Finder finder, const Position& position,
                                   Side side) {
  static const auto& weights = *new Weights();
  const Facts facts(position);
  std::vector<Draft> drafts;
  finder({position, facts, weights, side}, drafts);
  return drafts;
}

// The draft's own moves in SAN, with a space between.
inline std::string Words(const Position& position, Side side,
                         const Draft& draft) {
  Position at = position;
  std::string words;
  for (const Move move : draft.moves) {
    if (at.side_to_move() != side) at = at.AfterPass();
    words += (words.empty() ? "" : " ") + ToSan(at, move);
    at = at.After(move);
  }
  return words;
}

// What holds of every row: the draft or the silence, found for either colour
// and whoever is to move, each draft legal and with a target.
inline void CheckDrafts(Finder finder, PlanKind kind, const DraftRow& row) {
  const Position position = FromFen(row.fen);
  const std::vector<Draft> drafts = DraftsOf(finder, position, row.side);
  const std::string wanted = row.moves;
  ASSERT_EQ(drafts.empty(), wanted.empty())
      << (drafts.empty() ? "" : Words(position, row.side, drafts[0]));
  ASSERT_LE(drafts.size(), 3U);
  std::vector<std::string> found;
  std::size_t fewest = SIZE_MAX;
  for (const Draft& draft : drafts) {
    EXPECT_EQ(draft.kind, kind);
    ASSERT_TRUE(PlayAlone(position, row.side, draft.moves).has_value());
    ASSERT_FALSE(draft.targets.empty());
    EXPECT_FALSE(draft.claims.empty());
    if (draft.targets[0] == row.target) {
      // Another way to the same target has to be the shorter one.
      EXPECT_LT(draft.moves.size(), fewest);
      fewest = draft.moves.size();
      found.push_back(Words(position, row.side, draft));
    }
  }
  if (!wanted.empty()) {
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(found[0], wanted);
  }
  const Position swapped = SwapColours(position);
  const std::vector<Draft> others = DraftsOf(finder, swapped, Other(row.side));
  ASSERT_EQ(others.size(), drafts.size());
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    ASSERT_EQ(others[i].moves.size(), drafts[i].moves.size());
    for (std::size_t j = 0; j < drafts[i].moves.size(); ++j) {
      EXPECT_EQ(others[i].moves[j].from(), FlipRank(drafts[i].moves[j].from()));
      EXPECT_EQ(others[i].moves[j].to(), FlipRank(drafts[i].moves[j].to()));
    }
  }
  const std::vector<Draft> later =
      DraftsOf(finder, position.AfterPass(), row.side);
  EXPECT_EQ(later.empty(), drafts.empty());
}

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_DRAFTS_H_
