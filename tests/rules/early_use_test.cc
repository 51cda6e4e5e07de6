// The rules work in initialisers that run before main(), in whatever order the
// linker has put the files: whoever keeps a position in a global can.
#include "assay/rules/movegen.h"
#include "assay/rules/position.h"
#include "gtest/gtest.h"

namespace assay {
namespace {

std::size_t CountMoves(const Position& position) {
  MoveList moves;
  LegalMoves(position, moves);
  return moves.size();
}

const Position kEarlyPosition = Position::Initial();
const std::size_t kEarlyCount = CountMoves(kEarlyPosition);

TEST(EarlyUse, FindsTheMovesBeforeMain) { EXPECT_EQ(kEarlyCount, 20U); }

TEST(EarlyUse, LeavesTheTablesAsTheyWere) {
  EXPECT_EQ(CountMoves(kEarlyPosition), 20U);
  EXPECT_NE(RookAttacks(kA1, 0), 0U);
  EXPECT_NE(Between(kA1, kA8), 0U);
}

}  // namespace
}  // namespace assay
