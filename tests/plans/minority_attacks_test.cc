// Fewer pawns against more.
#include "tests/plans/pawn_plans.h"

namespace assay {
namespace {

using testing_support::PlanRow;

constexpr PlanRow kRows[] = {
    {{"Textbook"},
     "Kg1 Qd1 Ra1 Rf1 Bd3 Nc3 Nf3 a2 b2 d4 e3 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Be7 "
     "Nd7 Nf6 a7 b7 c6 d5 f7 g7 h7",
     Side::kWhite,
     "a2a3 b2b4 a3a4 b4b5",
     "c6"},
    {{"SideNotToMove"},
     "Kg1 Qd1 Ra1 Rf1 Bd3 Nc3 Nf3 a2 b2 d4 e3 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Be7 "
     "Nd7 Nf6 a7 b7 c6 d5 f7 g7 h7, Black to move",
     Side::kWhite,
     "a2a3 b2b4 a3a4 b4b5",
     "c6"},
    {{"RookOrPawnHelps"},
     "Kg1 Ra1 Rf1 Nf3 a2 b2 d4 e3 f2 g2 h2 v Kg8 Ra8 Rf8 Nf6 a7 b7 c6 d5 f7 g7 "
     "h7",
     Side::kWhite,
     "b2b4 a2a4 b4b5",
     "c6"},
    {{"NoRook"},
     "Kg1 Bd3 Nc3 a2 b2 d4 e3 f2 g2 h2 v Kg8 Be7 Nf6 a7 b7 c6 d5 f7 g7 h7",
     Side::kWhite,
     "",
     ""},
    {{"FileNotHalfOpen"},
     "Kg1 Ra1 Rf1 Nf3 b2 c2 d4 f2 g2 h2 v Kg8 Ra8 Rf8 Nf6 a7 b7 c6 d5 f7 g7 h7",
     Side::kWhite,
     "",
     ""},
    {{"AsManyPawns"},
     "Kg1 Ra1 Rf1 Nc3 a2 b2 d4 e3 f2 g2 h2 v Kg8 Ra8 Rf8 Nf6 b7 c6 d5 f7 g7 h7",
     Side::kWhite,
     "",
     ""},
    {{"PieceInTheWay"},
     "Kg1 Ra1 Rf1 Nc3 Bb3 a2 b2 d4 e3 f2 g2 h2 v Kg8 Ra8 Rf8 Nf6 a7 b7 c6 d5 "
     "f7 g7 h7",
     Side::kWhite,
     "",
     ""},
    {{"OwnKingThere"},
     "Kb1 Rd1 Rh1 Nc3 a2 b2 d4 e3 f2 g2 h2 v Kg8 Ra8 Rf8 Nf6 a7 b7 c6 d5 f7 g7 "
     "h7",
     Side::kWhite,
     "",
     ""},
    {{"OtherWing"},
     "Kb1 Qd1 Re1 Rh1 Bd3 Nf3 a2 b2 c2 d4 g2 h2 v Kc8 Qd8 Rd7 Rh8 Be7 Nd6 a7 "
     "b7 c7 d5 f6 g7 h7",
     Side::kWhite,
     "e1g1 g2g4 h2h4 g4g5",
     "f6"},
};

class MinorityAttacks : public ::testing::TestWithParam<PlanRow> {};

TEST_P(MinorityAttacks, AreProposedAsPlayersDo) {
  testing_support::ExpectPlan(DraftMinorityAttacks, PlanKind::kMinorityAttack,
                              GetParam());
}

INSTANTIATE_TEST_SUITE_P(Rows, MinorityAttacks, ::testing::ValuesIn(kRows),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
