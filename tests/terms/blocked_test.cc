// Positions that nothing can change. The walls are our own; that the game is
// over then is FIDE Laws 5.2.2, number from memory.
#include <gtest/gtest.h>

#include "assay/facts/endings.h"
#include "tests/support/ledgers.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::FromFen;

struct Wall : testing_support::Row {
  const char* fen;
  bool blocked;
};

constexpr Wall kWalls[] = {
    {{"WholeWall"}, "4k3/8/8/p1p1p1p1/PpPpPpPp/1P1P1P1P/8/4K3 w - - 0 1", true},
    {{"OneGap"}, "4k3/8/8/p1p1p3/PpPpPp2/1P1P1P2/8/4K3 w - - 0 1", false},
    {{"APawnMayMove"},
     "4k3/8/7p/p1p1p1p1/PpPpPpP1/1P1P1P1P/8/4K3 w - - 0 1",
     false},
    {{"ALever"}, "4k3/8/6p1/p1p1p3/PpPpPpPp/1P1P1P1P/8/4K3 w - - 0 1", false},
    {{"APieceIsLeft"},
     "4k3/8/8/p1p1p1p1/PpPpPpPp/1P1P1P1P/8/2N1K3 w - - 0 1",
     false},
    {{"KingOnTheOtherSide"},
     "K3k3/8/8/p1p1p1p1/PpPpPpPp/1P1P1P1P/8/8 w - - 0 1",
     false},
    {{"NoPawns"}, "4k3/8/8/8/8/8/8/4K3 w - - 0 1", false},
    {{"OneRamThatKingsReach"}, "4k3/8/8/4p3/4P3/8/8/4K3 w - - 0 1", false},
};

class Walls : public ::testing::TestWithParam<Wall> {};

TEST_P(Walls, AreToldFromGaps) {
  const Position position = FromFen(GetParam().fen);
  EXPECT_EQ(IsBlocked(Facts(position)), GetParam().blocked);
  const Position swapped = SwapColours(position);
  EXPECT_EQ(IsBlocked(Facts(swapped)), GetParam().blocked);
  const Position mirrored = MirrorFiles(position);
  EXPECT_EQ(IsBlocked(Facts(mirrored)), GetParam().blocked);
  if (GetParam().blocked) {
    EXPECT_EQ(ScoreOf(position, Weights()), 0);
  }
}

INSTANTIATE_TEST_SUITE_P(Positions, Walls, ::testing::ValuesIn(kWalls),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
