// Pawn breaks, and what they need first.
#include "tests/plans/pawn_plans.h"

namespace assay {
namespace {

using testing_support::PlanRow;

constexpr PlanRow kRows[] = {
    {{"KnightOutOfTheWay"},
     "Kg1 Qd1 Ra1 Rf1 Be2 Nc3 Nd2 a2 b2 c4 d5 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 "
     "Bg7 Nf6 Nd7 a7 b7 c7 d6 e5 f7 g6 h7, Black to move",
     Side::kBlack,
     "f6** f7f5",
     "e4"},
    {{"SideNotToMove"},
     "Kg1 Qd1 Ra1 Rf1 Be2 Nc3 Nd2 a2 b2 c4 d5 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 "
     "Bg7 Nf6 Nd7 a7 b7 c7 d6 e5 f7 g6 h7",
     Side::kBlack,
     "f6** f7f5",
     "e4"},
    {{"WhereTheChainPoints"},
     "Kg1 Qd1 Ra1 Rf1 Be2 Nc3 Nd2 a2 b2 c4 d5 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 "
     "Bg7 Nf6 Nd7 a7 b7 c7 d6 e5 f7 g6 h7",
     Side::kWhite,
     "b2b4 **** c4c5",
     "d6"},
    {{"BaseOfTheChain"},
     "Kg1 Qd1 Ra1 Rf1 Bd3 Nf3 a2 b2 c2 d4 e5 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Nd7 "
     "Ne7 a7 b7 c7 d5 e6 f7 g7 h7, Black to move",
     Side::kBlack,
     "c7c5",
     "d4"},
    {{"EdgePawn"},
     "Kg1 Ra1 Rf1 Nf3 a2 c3 f2 g2 h2 v Kg8 Rb8 Rf8 Nf6 b5 c4 f7 g7 h7",
     Side::kWhite,
     "a2a4",
     "b5"},
    {{"DissolvesDoubledPawns"},
     "Kg1 Rb1 Rd1 Be3 Nf3 a2 c3 c4 e4 f2 g2 h2 v Kg8 Ra8 Re8 Nf6 Bd7 a7 c7 "
     "d6 e5 f7 g7 h7",
     Side::kWhite,
     "c4c5",
     "d6"},
    {{"PawnWouldBeLost"}, "Kg1 e4 v Kg8 Rd8 d6 f6", Side::kWhite, "", ""},
    {{"NothingToHit"}, "Kg1 a2 v Kg8 h7", Side::kWhite, "", ""},
    {{"NotInCheck"},
     "Kg1 Nd2 a2 c2 c3 v Kg8 Rg3 a7 b7 d5",
     Side::kWhite,
     "",
     ""},
    {{"NotBeforeTheOwnKing"},
     "Kg1 Qd1 Rf1 Nf3 a2 b2 d4 f2 g2 h2 v Kg8 Qd8 Rf8 Nf6 a7 b7 c6 f7 f5 h5",
     Side::kWhite,
     "not g2g4",
     ""},
    {{"FreesTheBishop"},
     "Kg1 Qe2 Rc1 Rd1 Be3 Nc3 Nf3 a2 b3 c4 d4 f2 g2 h2 v Kg8 Qe7 Rc8 Rd8 Bb7 "
     "Nd7 Nf6 a7 b6 c6 e6 f7 g7 h7, Black to move",
     Side::kBlack,
     "c6c5",
     "d4"},
    {{"IsolatedPawnGoesBeforeItIsStopped"},
     "Kg1 Qe2 Rd1 Re1 Bb3 Nc3 Nf3 a3 b2 d4 f2 g2 h2 v Kg8 Qc7 Rc8 Rd8 Bd7 Nc6 "
     "Nf6 a7 b7 e6 f7 g7 h7",
     Side::kWhite,
     "d4d5",
     "e6"},
    {{"FileOpensOnTheQueen"},
     "Kg1 Qe2 Rd1 Re1 Bf4 Nc3 Nf3 a2 b2 c4 d4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Bd7 "
     "Be7 Nf6 a7 b7 c6 e6 f7 g7 h7",
     Side::kWhite,
     "d4d5",
     "c6 e6"},
    {{"HeadOfTheChainWithTheRookBehind"},
     "Kg1 Qd1 Ra1 Rf1 Be2 Nc2 Nf3 a2 b2 c3 d4 e5 f2 g2 h2 v Kg8 Qb6 Ra8 Rf8 "
     "Be7 Bd7 Nc6 a7 b7 d5 e6 f7 g7 h7, Black to move",
     Side::kBlack,
     "f7f6",
     "e5"},
    {{"KingOnTheFileOfTheBreakStays"},
     "Kf1 Qd1 Ra1 Rh1 Bd3 Nc3 Ne2 a2 b2 c4 d5 e4 f2 g3 h2 v Kg8 Qd8 Ra8 Rf8 "
     "Bd7 Be7 Nb6 a7 b7 c5 d6 e5 f7 g7 h7",
     Side::kWhite,
     "not f2f4",
     ""},
    {{"KnightMakesWayWhereNoPawnChasesIt"},
     "Kg1 Qe2 Ra1 Rf1 Bd3 Nc3 Nf3 a2 b3 c4 d5 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 "
     "Bd7 Be7 Na6 a7 b7 c5 d6 e5 f7 g7 h7",
     Side::kWhite,
     "not f3g5",
     ""},
};

class Levers : public ::testing::TestWithParam<PlanRow> {};

TEST_P(Levers, AreProposedAsPlayersDo) {
  testing_support::ExpectPlan(DraftLevers, PlanKind::kLever, GetParam());
}

INSTANTIATE_TEST_SUITE_P(Rows, Levers, ::testing::ValuesIn(kRows),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
