// Attacks on the king: storms of pawns, and pieces brought to it.
#include "assay/facts/claim_kind.h"
#include "tests/plans/pawn_plans.h"

namespace assay {
namespace {

using testing_support::PlanRow;

constexpr PlanRow kRows[] = {
    {{"OppositeWingsLeverAtTheHook"},
     "Kc1 Qd2 Rd1 Rh1 Be3 Nc3 Nf3 a2 b2 c2 e4 f2 g2 h4 v Kg8 Qd8 Ra8 Rf8 Bg7 "
     "Nd7 Bb7 a6 b5 d6 e7 f7 g6 h7",
     Side::kWhite,
     "h4h5",
     "g8 g6"},
    {{"OppositeWingsSideNotToMove"},
     "Kc1 Qd2 Rd1 Rh1 Be3 Nc3 Nf3 a2 b2 c2 e4 f2 g2 h4 v Kg8 Qd8 Ra8 Rf8 Bg7 "
     "Nd7 Bb7 a6 b5 d6 e7 f7 g6 h7, Black to move",
     Side::kWhite,
     "h4h5",
     "g8 g6"},
    {{"OppositeWingsKnightIsDriven"},
     "Kc1 Qd2 Rd1 Rg1 Bd3 Nc3 a2 b2 c2 e4 f3 g4 h2 v Kg8 Qd8 Ra8 Rf8 Be7 Nf6 "
     "a6 b5 d6 e6 f7 g7 h7",
     Side::kWhite,
     "g4g5",
     "g8 f6"},
    {{"OppositeWingsOnTheQueensSide"},
     "Kg1 Qd1 Ra1 Rb1 Bf1 Nc3 a4 b2 d3 e4 f2 g2 h2 v Kc8 Qd7 Rd8 Rh8 Be7 Nf6 "
     "a7 b6 c7 d6 e5 f7 g7 h6",
     Side::kWhite,
     "a4a5",
     "c8 b6"},
    {{"ChainPointsAtTheKing"},
     "Kg1 Qd1 Ra1 Rf1 Be2 Nc3 Nd2 a2 b2 c4 d5 e4 f3 g2 h2 v Kg8 Qd8 Ra8 Rf8 "
     "Bg7 Bd7 Nf6 a7 b7 c7 d6 e5 f4 g5 h7, Black to move",
     Side::kBlack,
     "h7h5 g5g4",
     "g1 f3"},
    {{"DuoRollsOn"},
     "Kg1 Qe2 Re1 Rf1 Bd3 Nf3 a2 b2 c3 e4 f4 g2 h2 v Kg8 Qd8 Ra8 Rf8 Bg7 "
     "Nc6 a6 b7 c5 d6 e7 f7 g6 h7",
     Side::kWhite,
     "f4f5",
     "g8 g6"},
    {{"QueensAreOff"},
     "Kc1 Rd1 Rh1 Be3 Nc3 Nf3 a2 b2 c2 e4 f2 g2 h4 v Kg8 Ra8 Rf8 Bg7 Nd7 Bb7 "
     "a6 b5 d6 e7 f7 g6 h7",
     Side::kWhite,
     "",
     ""},
    {{"KingsOnOneWing"},
     "Kg1 Qd1 Ra1 Rf1 Be2 Nf3 a2 b2 c3 d4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Be7 Nf6 "
     "a7 b7 c6 d5 f7 g7 h7",
     Side::kWhite,
     "",
     ""},
    {{"OpenCentreAndBehindInDevelopment"},
     "Kc1 Qd2 Rd1 Rh1 Bf1 Ng1 Be3 Nc3 a2 b2 c2 f2 g2 h4 v Kg8 Qe7 Rd8 Re8 Bf6 "
     "Nc6 Be6 Nd7 a7 b7 c7 f7 g6 h7",
     Side::kWhite,
     "",
     ""},
    {{"NotInCheck"},
     "Kc1 Qd2 Rd1 Rh1 Nf6 Nf3 a2 b2 c2 e4 f2 g2 h4 v Kg8 Qd8 Ra8 Rf8 Bg7 Nd7 "
     "a6 b5 d6 e7 f7 g6 h7, Black to move",
     Side::kBlack,
     "",
     ""},
    {{"QueenJoinsBishopAndKnight"},
     "Kg1 Qd1 Ra1 Rf1 Bd3 Ng5 a2 b2 c3 d4 f2 g2 h2 v Kg8 Qa5 Ra8 Rc8 Bd7 Nb6 "
     "a7 b7 c6 d5 f7 g7 h7",
     Side::kWhite,
     "d1h5",
     "g8"},
    {{"RookIsLifted"},
     "Kg1 Qh5 Ra1 Re1 Bd3 Bb2 a2 b3 c4 d4 f2 g2 h2 v Kg8 Qc7 Ra8 Rd8 Bb7 Nd7 "
     "a6 b6 c5 e6 f7 g7 h6",
     Side::kWhite,
     "e1e3 e3g3",
     "g8"},
    {{"KnightOpensTheQueensWay"},
     "Kg1 Qd1 Ra1 Rf1 Bd3 Bf4 Nd2 Nf3 a2 b2 c3 d4 e3 f2 g2 h2 v Kg8 Qd8 Ra8 "
     "Rf8 Be7 Bb7 Nd7 Nf6 a7 b6 c5 d5 e6 f7 g7 h7",
     Side::kWhite,
     "f3e5 d1f3 f3g3",
     "g8"},
    {{"EdgeFileStorm"},
     "Kb1 Qd2 Rd1 Rh1 Bd3 Nf3 a2 b2 c3 d4 f2 g4 h2 v Kh8 Qe7 Ra8 Re8 Bb7 Nd7 "
     "a7 b6 c5 d5 f7 g7 h6",
     Side::kWhite,
     "g4g5",
     "h8 h6"},
    {{"NothingLooksAtTheKing"},
     "Kg1 Qb3 Ra1 Rb1 Bb2 Na4 a2 c4 d3 f2 g2 h2 v Kg8 Qd7 Rf8 Re8 Bg7 Nf6 a7 "
     "b6 c5 d6 f7 g6 h7",
     Side::kWhite,
     "",
     ""},
    {{"DuoHitsTheGuardOfTheWing"},
     "Kg1 Qf2 Ra1 Rf1 Bd3 Bd2 Ng3 c3 c4 d4 e4 f4 g2 h2 v Kg8 Qd8 Ra8 Rf8 Bb7 "
     "Nd7 Ne7 a7 b6 d6 e6 f7 g7 h7",
     Side::kWhite,
     "f4f5",
     "g8 e6"},
    {{"RookIsLiftedBesideTheKnight"},
     "Kg1 Qd1 Ra1 Rf1 Bd3 Bc1 Nd2 Ne5 a2 b2 c3 d4 e3 f4 g2 h2 v Kg8 Qd8 Ra8 "
     "Rf8 Be7 Bb7 Nc6 Nf6 a7 b6 c5 d5 e6 f7 g7 h7",
     Side::kWhite,
     "f1f3 f3h3",
     "g8"},
    {{"NoLiftInAnOpenCentre"},
     "Kg1 Qd1 Ra1 Rf1 Bd3 Bc1 Nd2 Ne5 a2 b2 c3 f4 g2 h2 v Kg8 Qd8 Ra8 Rf8 Be7 "
     "Bb7 Nc6 Nf6 a7 b6 c5 f7 g7 h7",
     Side::kWhite,
     "not f1f3",
     ""},
    {{"KnightComesBesideTheWedge"},
     "Kg1 Qd1 Ra1 Re1 Bd3 Nd2 Nf3 a3 b2 c3 d4 e5 f2 g2 h2 v Kg8 Qc7 Ra8 Rf8 "
     "Bc8 Nb6 Ne7 a5 b7 c5 d5 e6 f7 g7 h6",
     Side::kWhite,
     "d2f1 f1g3 g3h5",
     "g8"},
    {{"NotWithoutTheWedge"},
     "Kg1 Qd1 Ra1 Re1 Bd3 Nd2 Nf3 a3 b2 c3 d4 e3 f2 g2 h2 v Kg8 Qc7 Ra8 Rf8 "
     "Bc8 Nb6 Ne7 a5 b7 c5 d5 e6 f7 g7 h6",
     Side::kWhite,
     "not d2f1",
     ""},
    {{"RookOnTheFileToTheKingCounts"},
     "Kb1 Qd2 Rd1 Rh1 Bb3 Be3 Nc3 Nd4 a2 b2 c2 e4 f3 g2 h4 v Kg8 Qa5 Rc8 Rf8 "
     "Bd7 Bg7 Ne5 Nf6 a6 b7 d6 e7 f7 g6 h7, Black to move",
     Side::kBlack,
     "e5c4",
     "b1"},
    {{"NoFileNoAttackers"},
     "Kb1 Qd2 Rd1 Rh1 Bb3 Be3 Nc3 Nd4 a2 b2 c2 e4 f3 g2 h4 v Kg8 Qa5 Re8 Rf8 "
     "Bd7 Bg7 Ne5 Nf6 a6 b7 c7 d6 f7 g6 h7, Black to move",
     Side::kBlack,
     "not e5c4",
     ""},
};

class KingAttacks : public ::testing::TestWithParam<PlanRow> {};

TEST_P(KingAttacks, AreProposedAsPlayersDo) {
  testing_support::ExpectPlan(DraftKingAttacks, PlanKind::kKingAttack,
                              GetParam());
}

INSTANTIATE_TEST_SUITE_P(Rows, KingAttacks, ::testing::ValuesIn(kRows),
                         testing_support::NameOfRow());

// What the sentence rests on can be recomputed: the pieces that look at the
// king once they have come, after the plan's own line.
TEST(KingAttackClaims, CountThePiecesAfterTheLine) {
  const Position position = testing_support::FromPieces(
      "Kg1 Qd1 Ra1 Rf1 Bd3 Ng5 a2 b2 c3 d4 f2 g2 h2 v Kg8 Qa5 Ra8 Rc8 Bd7 Nb6 "
      "a7 b7 c6 d5 f7 g7 h7");
  const std::vector<Draft> drafts =
      testing_support::DraftsOf(DraftKingAttacks, position, Side::kWhite);
  ASSERT_EQ(drafts.size(), 1u);
  const Claim& claim = drafts[0].claims.at(0);
  EXPECT_EQ(claim.kind, ClaimKind::kKingAttackers);
  EXPECT_EQ(claim.side, Side::kBlack);
  EXPECT_EQ(testing_support::Text(claim.line), "d1h5");
  EXPECT_EQ(claim.count, 3);
  EXPECT_EQ(claim.others.ToSet(), Bit(kD3) | Bit(kG5) | Bit(kH5));
}

}  // namespace
}  // namespace assay
