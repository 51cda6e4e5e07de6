// What every trainer teaches of activity, asked of the terms that measure it.
// Common practice, no source; the positions are our own, each also tried with
// the colours swapped. In the second position of a pair White is worse by the
// term alone that the test names.
#include "gtest/gtest.h"
#include "tests/support/from_pieces.h"
#include "tests/support/ledgers.h"
#include "tests/support/pairs.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::FromPieces;
using testing_support::NameOfRow;
using testing_support::Pair;
using testing_support::Pairs;
using testing_support::SumFor;

constexpr Pair kNearKing[] = {
    {{"KnightComesCloser"},
     "Kg1 Qd1 f2 g2 h2 v Kg8 Qd8 Nd5 f7 g7 h7",
     "Kg1 Qd1 f2 g2 h2 v Kg8 Qd8 Nf4 f7 g7 h7"},
    {{"FourMovesAwayIsNear"},
     "Kg1 f2 g2 v Kg8 Rg6 f7 g7",
     "Kg1 f2 g2 v Kg8 Rg5 f7 g7"},
    {{"OnTheEdge"}, "Ka1 a2 v Kg8 Rd8 g7", "Ka1 a2 v Kg8 Rd3 g7"},
};
class NearKing : public Pairs {};
TEST_P(NearKing, IsWorseTheNearerTheyCome) {
  ExpectBetterBy({TermId::kNearKing});
}
INSTANTIATE_TEST_SUITE_P(Positions, NearKing, ::testing::ValuesIn(kNearKing),
                         NameOfRow());

TEST(NearKingAlone, LeavesOutBishopsAndWhatIsFiveMovesAway) {
  for (const char* pieces : {"Kg1 g2 v Kg8 Bg4 g7", "Kg1 g2 v Kg8 Rg6 g7"}) {
    EXPECT_EQ(SumFor(FromPieces(pieces), Side::kWhite, {TermId::kNearKing}), 0)
        << pieces;
  }
}

constexpr Pair kCheckSquares[] = {
    {{"TheSquareIsGuarded"},
     "Kg1 Rc1 f2 g2 h2 v Kg8 Rd8 f7 g7 h7",
     "Kg1 Ra2 f2 g2 h2 v Kg8 Rd8 f7 g7 h7"},
    {{"KnightCheck"},
     "Kg1 Bd3 g2 h2 v Kg8 Nd4 g7 h7",
     "Kg1 Bb8 g2 h2 v Kg8 Nd4 g7 h7"},
    {{"TheKingGuardsAloneAndTwoAttack"},
     "Kg1 f2 g2 h2 v Kg8 Qd6 Nh5 g7 h7",
     "Kg1 f2 g2 h2 v Kg8 Qd6 Ng4 g7 h7"},
};
class CheckSquaresAtHand : public Pairs {};
TEST_P(CheckSquaresAtHand, AreWorseThanNone) {
  ExpectBetterBy({TermId::kCheckSquares});
}
INSTANTIATE_TEST_SUITE_P(Positions, CheckSquaresAtHand,
                         ::testing::ValuesIn(kCheckSquares), NameOfRow());

constexpr Pair kZone[] = {
    {{"ASecondAttackerOnTheSameSquares"},
     "Kg1 Qd1 Ra1 Rf1 Nb1 f2 g2 h2 v Kg8 Qh5 Ra8 Rf8 Be7 f7 g7 h7",
     "Kg1 Qd1 Ra1 Rf1 Nb1 f2 g2 h2 v Kg8 Qh5 Ra8 Rf8 Bd6 f7 g7 h7"},
};
class KingZone : public Pairs {};
TEST_P(KingZone, IsWorseUnderTwoAttackers) {
  ExpectBetterBy({TermId::kKingZone});
}
INSTANTIATE_TEST_SUITE_P(Positions, KingZone, ::testing::ValuesIn(kZone),
                         NameOfRow());

constexpr Pair kShut[] = {
    {{"LuftInAnEnding"},
     "Kh1 g2 h3 v Kb8 Re1 a7 b7",
     "Kh1 g2 h2 v Kb8 Re1 a7 b7"},
};
class ShutKing : public Pairs {};
TEST_P(ShutKing, WantsLuft) { ExpectBetterBy({TermId::kKingShut}); }
INSTANTIATE_TEST_SUITE_P(Positions, ShutKing, ::testing::ValuesIn(kShut),
                         NameOfRow());

constexpr Pair kUnderFire[] = {
    {{"GuardedKnightUnderABishop"},
     "Kg1 Ne4 d3 h2 v Kg8 Bd7 g7 h7 f6",
     "Kg1 Ne4 d3 h2 v Kg8 Bd5 g7 h7 f6"},
    {{"RookUnderAKnight"},
     "Kg1 Rd1 g2 h2 v Kg8 Ne4 g7 h7",
     "Kg1 Rd2 g2 h2 v Kg8 Ne4 g7 h7"},
};
class UnderFire : public Pairs {};
TEST_P(UnderFire, IsWorseEvenWhereNothingHangs) {
  ExpectBetterBy({TermId::kUnderFire});
}
INSTANTIATE_TEST_SUITE_P(Positions, UnderFire, ::testing::ValuesIn(kUnderFire),
                         NameOfRow());

TEST(UnderFireAlone, IsNotSaidOfPawnsNorUnderRooks) {
  for (const char* pieces : {"Kg1 d4 v Kg8 Nc6", "Kg1 Nd4 v Kg8 Rd8"}) {
    EXPECT_EQ(SumFor(FromPieces(pieces), Side::kWhite, {TermId::kUnderFire}), 0)
        << pieces;
  }
}

constexpr Pair kPawnsUp[] = {
    {{"OneStepFurther"},
     "Kg1 c5 d4 v Kg8 c6 d7 e7",
     "Kg1 c4 d4 v Kg8 c6 d7 e7"},
    {{"RookPawns"}, "Kg1 a5 v Kg8 a6 h6", "Kg1 a4 v Kg8 a6 h6"},
};
class PawnsUpTheBoard : public Pairs {};
TEST_P(PawnsUpTheBoard, TakeSpace) { ExpectBetterBy({TermId::kAdvancedPawns}); }
INSTANTIATE_TEST_SUITE_P(Positions, PawnsUpTheBoard,
                         ::testing::ValuesIn(kPawnsUp), NameOfRow());

constexpr Pair kLinks[] = {
    {{"GuardedOnTheThird"}, "Kg1 b2 c3 v Kg8 b7 c7", "Kg1 b3 c3 v Kg8 b7 c7"},
    {{"Fianchetto"},
     "Kg1 f2 g3 h2 v Kg8 f7 g7 h7",
     "Kg1 f2 g2 h2 v Kg8 f7 g7 h7"},
};
class Links : public Pairs {};
TEST_P(Links, AreSolid) { ExpectBetterBy({TermId::kPawnLink}); }
INSTANTIATE_TEST_SUITE_P(Positions, Links, ::testing::ValuesIn(kLinks),
                         NameOfRow());

constexpr Pair kCentre[] = {
    {{"AnExtraCentrePawn"},
     "Kg1 Qd1 Ra1 Rf1 Nf3 d4 e4 g2 v Kg8 Qd8 Ra8 Rf8 Nf6 c5 d6 g7",
     "Kg1 Qd1 Ra1 Rf1 Nf3 c4 e4 g2 v Kg8 Qd8 Ra8 Rf8 Nf6 c5 d6 g7"},
};
class CentrePawns : public Pairs {};
TEST_P(CentrePawns, AreWorthHaving) {
  ExpectBetterBy({TermId::kCentreMajority});
}
INSTANTIATE_TEST_SUITE_P(Positions, CentrePawns, ::testing::ValuesIn(kCentre),
                         NameOfRow());

constexpr Pair kScreens[] = {
    {{"BehindTheOwnPawn"},
     "Kg1 Nd3 d4 v Kg8 d5 Nb8",
     "Kg1 Nd2 d4 v Kg8 d5 Nb8"},
    {{"BehindAnEnemyPawn"}, "Kg1 Nd4 v Kg8 d5", "Kg1 Ne4 v Kg8 d6"},
};
class Screens : public Pairs {};
TEST_P(Screens, ShelterMinorPieces) {
  ExpectBetterBy({TermId::kScreenedMinor});
}
INSTANTIATE_TEST_SUITE_P(Positions, Screens, ::testing::ValuesIn(kScreens),
                         NameOfRow());

constexpr Pair kKings[] = {
    {{"NearThePawns"}, "Kf3 f2 g2 v Kb8 f7 g7", "Kb3 f2 g2 v Kb8 f7 g7"},
};
class KingsInEndings : public Pairs {};
TEST_P(KingsInEndings, BelongNearThePawns) {
  ExpectBetterBy({TermId::kKingNearPawns});
}
INSTANTIATE_TEST_SUITE_P(Positions, KingsInEndings, ::testing::ValuesIn(kKings),
                         NameOfRow());

constexpr Pair kRaids[] = {
    {{"NoPawnGuardsIt"}, "Kd6 a2 v Kg8 e5 a7", "Kc6 a2 v Kg8 e5 a7"},
    {{"APawnGuardsIt"}, "Kd6 a2 v Kg8 e5 g6", "Kd6 a2 v Kg8 e5 f6"},
};
class Raids : public Pairs {};
TEST_P(Raids, AreForKings) { ExpectBetterBy({TermId::kKingRaid}); }
INSTANTIATE_TEST_SUITE_P(Positions, Raids, ::testing::ValuesIn(kRaids),
                         NameOfRow());

constexpr Pair kFar[] = {
    {{"RookInTheOthersHalf"},
     "Kg1 Rd6 a2 v Kg8 Ra8 a7",
     "Kg1 Ra1 a2 v Kg8 Ra8 a7"},
};
class FarControlled : public Pairs {};
TEST_P(FarControlled, IsActivityInAnEnding) {
  ExpectBetterBy({TermId::kFarControl});
}
INSTANTIATE_TEST_SUITE_P(Positions, FarControlled, ::testing::ValuesIn(kFar),
                         NameOfRow());

constexpr Pair kThin[] = {
    {{"ASecondGuard"},
     "Kg1 Rb1 Nd1 b2 v Kg8 Rb8 h7",
     "Kg1 Rb1 Ne1 b2 v Kg8 Rb8 h7"},
    {{"APawnGuardsIt"},
     "Kg1 Rb1 a2 b3 v Kg8 Rb8 h7",
     "Kg1 Rb1 a3 b3 v Kg8 Rb8 h7"},
    {{"OnTheEdge"},
     "Kg1 Ra1 Nc2 a3 v Kg8 Ra8 h7",
     "Kg1 Ra1 Nd2 a3 v Kg8 Ra8 h7"},
};
class Thin : public Pairs {};
TEST_P(Thin, GuardsAreWorseInAnEnding) {
  ExpectBetterBy({TermId::kThinlyGuarded});
}
INSTANTIATE_TEST_SUITE_P(Positions, Thin, ::testing::ValuesIn(kThin),
                         NameOfRow());

TEST(ThinlyGuarded, LeavesOutWhatHangsAndWhatIsNotAttacked) {
  for (const char* pieces :
       {"Kg1 a2 v Kg8 Ra8 h7", "Kg1 Rb1 b2 v Kg8 Rd8 h7"}) {
    EXPECT_EQ(
        SumFor(FromPieces(pieces), Side::kWhite, {TermId::kThinlyGuarded}), 0)
        << pieces;
  }
}

// One move saves one thing: White to move saves either knight, not both.
TEST(HangingOnTheOwnMove, CostsLittleForOneThingAndMuchForTwo) {
  const auto cost = [](const char* pieces) {
    return -SumFor(FromPieces(pieces), Side::kWhite, {TermId::kHanging});
  };
  const int first = cost("Kg1 Na4 v Kg8 Ra8");
  const int both = cost("Kg1 Na4 Nd4 v Kg8 Ra8 Rd8");
  EXPECT_GT(first, 0);
  EXPECT_GT(both, 3 * first);
}

}  // namespace
}  // namespace assay
