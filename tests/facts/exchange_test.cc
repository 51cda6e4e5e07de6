// The exchange value of a square: the fast path against the definition, and
// by hand. Values of pieces are 100, 325, 325, 500, 975 (Kaufman 1999).
#include "assay/facts/exchange.h"

#include "assay/facts/danger.h"
#include "gtest/gtest.h"
#include "tests/support/from_pieces.h"
#include "tests/support/random_play.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct Exchange : testing_support::Row {
  const char* position;
  Square square;
  int value;
};

// Each sum is given beside its row where it is not the piece's own value.
constexpr Exchange kExchanges[] = {
    {{"EmptySquare"}, "Kg1 v Kg8 Rd8", kD4, 0},
    {{"King"}, "Kg1 v Kh8 Rg5", kG1, 0},
    {{"NotAttacked"}, "Kg1 Nd4 v Kg8 Rc8", kD4, 0},
    {{"Undefended"}, "Kg1 Nd4 v Kg8 Rd8", kD4, 325},
    {{"UndefendedPawn"}, "Kg1 d4 v Kg8 Rd8", kD4, 100},
    {{"GuardedAgainstMore"}, "Kg1 Nd4 c3 v Kg8 Rd8", kD4, 0},
    {{"GuardedAgainstLess"}, "Kg1 Rd4 c3 v Kg8 Bg7", kD4, 175},
    {{"QueenForRook"}, "Kg1 Qd4 c3 v Kg8 Rd8", kD4, 475},
    {{"EqualTrade"}, "Kg1 Nd4 c3 v Kg8 Bg7", kD4, 0},
    // The knight takes first: 325 - 325 + 325.
    {{"CheapestFirst"}, "Kg1 Nd4 Rd1 v Kg8 Nc6 Qd8", kD4, 325},
    // The recapture would cost the second rook: Black gains the knight.
    {{"RookBehindRook"}, "Kg1 Nd4 Rd1 v Kg8 Rd7 Rd8", kD4, 325},
    {{"OneRookAlone"}, "Kg1 Nd4 Rd1 v Kg8 Rd7", kD4, 0},
    {{"QueenBehindRook"}, "Kg1 Nd4 Rd1 v Kg8 Rd7 Qd8", kD4, 325},
    // With the queen in front, 325 - 975 + 500 is a loss.
    {{"QueenBeforeRook"}, "Kg1 Nd4 Rd1 v Kg8 Qd7 Rd8", kD4, 0},
    // Bishop b2 stands behind the pawn on its capturing diagonal: knights come
    // off, and the rook cannot take the pawn.
    {{"BishopBehindPawn"}, "Kg1 Nd4 c3 Bb2 v Kg8 Nc6 Rd8", kD4, 0},
    {{"NoBishopBehindPawn"}, "Kg1 Nd4 c3 v Kg8 Nc6 Rd8", kD4, 100},
    {{"DefendersInARow"}, "Kg1 Nd4 Rd1 Rd2 v Kg8 Rd7 Rd8", kD4, 0},
    {{"PinnedDefender"}, "Ka3 Nd4 e3 v Kg8 Rd8 Rg3", kD4, 325},
    {{"PinnedAttacker"}, "Kg1 Nd4 Re1 v Ke8 e5", kD4, 0},
    {{"PinnedAttackerIsHitItself"}, "Kg1 Nd4 Re1 v Ke8 e5", kE5, 100},
    {{"AlongThePin"}, "Kh1 Re1 v Ke8 Re5", kE1, 500},
    {{"KingTakes"}, "Kg1 Nd4 v Kd5", kD4, 325},
    {{"KingMayNotTake"}, "Kc3 Nd4 v Kd5", kD4, 0},
    {{"KingMayNotTakeWhatALineGuards"}, "Kg1 Nd4 Rd1 v Kd5", kD4, 0},
    {{"KingTakesLast"}, "Kg1 Nd4 Rd1 v Ke5 Rd8", kD4, 325},
    // 1...Nxc4 opens the e-file: 2.Bxc4 would leave White in check.
    {{"DiscoveredCheck"}, "Ke1 Bf1 c4 v Kg8 Re8 Ne5", kC4, 100},
    {{"NoDiscoveredCheck"}, "Kd1 Bf1 c4 v Kg8 Re8 Ne5", kC4, 0},
    {{"OwnCheckMustBeMetFirst"},
     "Kg1 Re1 Na4 v Ke8 Ra8, Black to move",
     kA4,
     0},
    {{"PassInCheck"}, "Ke1 Na4 v Kg8 Ra8 Re8", kA4, 0},
    {{"CaptureOfTheChecker"}, "Kg1 Re5 v Ke8 Bb8, Black to move", kE5, 500},
    // 325 + 975 - 100.
    {{"Promotion"}, "Kg1 a7 v Kg6 Nb8", kB8, 1200},
    // 1200 - 975.
    {{"PromotedAndTaken"}, "Kg1 a7 v Kc7 Nb8", kB8, 225},
    // After 1.axb8 Rxb8 2.cxb8 the second pawn promotes: Black stops at once.
    {{"TwoPromotions"}, "Kg1 a7 c7 v Kh7 Nb8 Rb2", kB8, 1200},
    // A pawn takes back and promotes: 500 - 500 - 875.
    {{"RecaptureThatPromotes"}, "Kg1 Ra8 b7 v Kg6 Re8", kA8, 0},
    {{"EnPassantIsLeftOut"}, "4k3/8/8/8/3pP3/8/8/4K3 b - e3 0 1", kE4, 0},
    {{"EdgeFile"}, "Kh1 Ra4 b3 v Kg8 Ra8 Qa7", kA4, 0},
    {{"EdgeFileRooksFirst"}, "Kg1 Ra4 b3 v Kg8 Ra7 Qa8", kA4, 100},
};

class Exchanges : public ::testing::TestWithParam<Exchange> {};

TEST_P(Exchanges, AreWhatTheySayBothWays) {
  const Exchange& row = GetParam();
  const Position position = testing_support::FromPieces(row.position);
  EXPECT_EQ(ExchangeValueOf(position, row.square), row.value);
  EXPECT_EQ(ExchangeValueByDefinition(position, row.square), row.value);
  const Position swapped = SwapColours(position);
  EXPECT_EQ(ExchangeValueOf(swapped, FlipRank(row.square)), row.value);
  const Position mirrored = MirrorFiles(position);
  EXPECT_EQ(ExchangeValueOf(mirrored, FlipFile(row.square)), row.value);
}

INSTANTIATE_TEST_SUITE_P(Positions, Exchanges, ::testing::ValuesIn(kExchanges),
                         testing_support::NameOfRow());

// In parts, so that one that fails says sooner where.
class RandomPlay : public ::testing::TestWithParam<int> {};

TEST_P(RandomPlay, FastPathEqualsDefinition) {
  constexpr int kPositions = 100000;
  const auto seed = static_cast<std::uint64_t>(GetParam());
  int squares = 0;
  int gains = 0;
  int guarded = 0;
  const auto compare = [&](const Position& position, Move /*next*/) {
    if (::testing::Test::HasFailure()) return;
    const Facts facts(position);
    for (const Side side : kSides) {
      for (const Square square : Each(SafelyGuarded(facts, side))) {
        ASSERT_EQ(ExchangeValueByDefinition(position, square), 0)
            << ToString(square) << ' ' << ::testing::PrintToString(position);
        ASSERT_FALSE(IsTrapped(facts, square))
            << ToString(square) << ' ' << ::testing::PrintToString(position);
        ++guarded;
      }
    }
    for (const Square square : Each(position.Occupied())) {
      const int fast = ExchangeValueOf(position, square);
      ASSERT_EQ(fast, ExchangeValueByDefinition(position, square))
          << ToString(square) << ' ' << ::testing::PrintToString(position);
      ++squares;
      gains += fast > 0 ? 1 : 0;
    }
  };
  testing_support::PlayAtRandom(seed, kPositions, compare);
  // The comparison is worth something only where much can be captured.
  EXPECT_GT(gains, squares / 50);
  EXPECT_GT(guarded, squares / 500);
}

INSTANTIATE_TEST_SUITE_P(Seeds, RandomPlay, ::testing::Values(1, 2, 3, 4));

}  // namespace
}  // namespace assay
