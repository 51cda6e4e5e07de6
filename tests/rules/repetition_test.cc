// Repetition, by the FIDE Laws 9.2.2, 9.2.3 and 9.6.1 (numbers from memory):
// the same position is the same placement with the same side to move and the
// same moves possible, castling and en passant included.
#include <sstream>
#include <string>

#include "assay/rules/draw.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct Game : testing_support::Row {
  const char* start;
  const char* moves;
  int occurrences;  // of the position after the last move
};

constexpr char kInitial[] =
    "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1";
constexpr char kBothCastle[] = "r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1";
constexpr char kRooksHome[] = "r3k2r/8/8/8/8/8/8/R3K2R w - - 0 1";

constexpr Game kGames[] = {
    {{"FirstPosition"}, kInitial, "", 1},
    {{"NewPosition"}, kInitial, "Nf3", 1},
    {{"Twice"}, kInitial, "Nf3 Nf6 Ng1 Ng8", 2},
    {{"ThreeTimes"}, kInitial, "Nf3 Nf6 Ng1 Ng8 Nf3 Nf6 Ng1 Ng8", 3},
    {{"ThreeTimesByOtherWays"}, kInitial, "Nf3 Nf6 Ng1 Ng8 Nc3 Nc6 Nb1 Nb8", 3},
    {{"FiveTimes"},
     kInitial,
     "Nf3 Nf6 Ng1 Ng8 Nf3 Nf6 Ng1 Ng8 Nf3 Nf6 Ng1 Ng8 Nf3 Nf6 Ng1 Ng8",
     5},
    {{"OtherSideToMoveIsAnotherPosition"},
     "4k3/8/8/8/8/8/8/R3K3 w - - 0 1",
     "Ra2 Ke7 Ra3 Ke8 Ra1",
     1},
    {{"LostCastlingRightsMakeAnother"}, kBothCastle, "Ke2 Ke7 Ke1 Ke8", 1},
    {{"WithoutRightsItIsTheSame"}, kRooksHome, "Ke2 Ke7 Ke1 Ke8", 2},
    {{"OneLostRightMakesAnother"}, kBothCastle, "Rb1 Rb8 Ra1 Ra8", 1},
    {{"RightsAlreadyLostMakeNoOther"},
     kBothCastle,
     "Rb1 Rb8 Ra1 Ra8 Rb1 Rb8 Ra1 Ra8",
     2},
    {{"RightThatCannotBeUsedYetStillCounts"},
     kInitial,
     "Nf3 Nf6 Rg1 Rg8 Rh1 Rh8 Ng1 Ng8",
     1},
    {{"LegalEnPassantMakesAnother"},
     "4k1n1/8/8/8/3p4/8/4P3/4K1N1 w - - 0 1",
     "e4 Nf6 Nf3 Ng8 Ng1 Nf6 Nf3 Ng8 Ng1",
     2},
    {{"NoPawnToTakeMakesNoOther"},
     "4k1n1/8/8/8/8/3p4/4P3/4K1N1 w - - 0 1",
     "e4 Nf6 Nf3 Ng8 Ng1 Nf6 Nf3 Ng8 Ng1",
     3},
    {{"PinnedTakerMakesNoOther"},
     "3k2n1/8/8/8/3p4/8/4P3/3RK1N1 w - - 0 1",
     "e4 Nf6 Nf3 Ng8 Ng1 Nf6 Nf3 Ng8 Ng1",
     3},
    {{"CountGoesOnAcrossOtherPositions"},
     kInitial,
     "Nf3 Nf6 Nd4 Nd5 Nf3 Nf6 Ng1 Ng8",
     2},
    {{"PawnMoveBeginsAnew"},
     kInitial,
     "Nf3 Nf6 Ng1 Ng8 e3 e6 Nf3 Nf6 Ng1 Ng8",
     2},
};

class Repetition : public ::testing::TestWithParam<Game> {};

TEST_P(Repetition, CountsThePositionReached) {
  Position position = testing_support::FromFen(GetParam().start);
  RepetitionCount count;
  count.Record(position);
  std::istringstream moves(GetParam().moves);
  for (std::string move; moves >> move;) {
    position = position.After(testing_support::MoveOf(position, move));
    count.Record(position);
  }
  EXPECT_EQ(count.Occurrences(), GetParam().occurrences);
}

INSTANTIATE_TEST_SUITE_P(Games, Repetition, ::testing::ValuesIn(kGames),
                         testing_support::NameOfRow());

TEST(RepetitionCount, IsZeroBeforeAnyPosition) {
  EXPECT_EQ(RepetitionCount().Occurrences(), 0);
}

}  // namespace
}  // namespace assay
