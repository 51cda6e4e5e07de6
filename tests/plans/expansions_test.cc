// Supported advances for space.
#include "tests/plans/pawn_plans.h"

namespace assay {
namespace {

using testing_support::PlanRow;

constexpr PlanRow kRows[] = {
    {{"MobileCentre"},
     "Kg1 Qd1 Ra1 Rf1 Bd3 Nf3 a2 b2 d4 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Nf6 Bb7 "
     "e6 a7 b6 f7 g7 h7",
     Side::kWhite,
     "e4e5",
     "e5"},
    {{"SideNotToMove"},
     "Kg1 Qd1 Ra1 Rf1 Bd3 Nf3 a2 b2 d4 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Nf6 Bb7 "
     "e6 a7 b6 f7 g7 h7, Black to move",
     Side::kWhite,
     "e4e5",
     "e5"},
    {{"WingBehindALockedCentre"},
     "Kg1 Qd1 Ra1 Rf1 Be2 Nc3 Nd2 a2 b2 c4 d5 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 "
     "Bg7 Nf6 Nd7 a7 b7 c7 d6 e5 f7 g6 h7",
     Side::kWhite,
     "b2b4",
     "b4"},
    {{"EdgePawn"},
     "Kg1 Qd1 Ra1 Rf1 Be2 Nc3 Nd2 a2 b4 c4 d5 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 "
     "Bg7 Nf6 Nd7 a7 b7 c7 d6 e5 f7 g6 h7",
     Side::kWhite,
     "a2a4",
     "a4"},
    {{"NotBeforeTheOwnKing"},
     "Kg1 Qd1 Ra1 Rf1 Be2 Nc3 Nd2 a2 b2 c4 d5 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 "
     "Bg7 Nf6 Nd7 a7 b7 c7 d6 e5 f7 g6 h7",
     Side::kWhite,
     "not g2g4",
     ""},
    {{"NotALever"},
     "Kg1 Qd1 Ra1 Rf1 Bd3 Nf3 a2 b2 d4 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Nf6 Bb7 "
     "e6 a7 b6 f7 g7 h7",
     Side::kWhite,
     "not d4d5",
     ""},
    {{"NoSupport"}, "Kg1 e4 v Kg8 d7 a7", Side::kWhite, "", ""},
    {{"OpenCentre"},
     "Kg1 Qd1 Ra1 Rf1 Be2 Be3 Nc3 Nf3 a2 b2 c2 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Be7 "
     "Be6 Nc6 Nf6 a7 b7 c7 f7 g7 h7",
     Side::kWhite,
     "",
     ""},
    {{"NoEnemyPawnInTheCentre"},
     "Kg1 Qe2 Rc1 Rd1 Nd2 Nf3 a2 b3 c4 f2 g2 h2 v Kg8 Qc7 Ra8 Rd8 Nc6 Nf6 a6 "
     "b7 e6 f7 g7 h7, Black to move",
     Side::kBlack,
     "e6e5",
     "e5"},
    {{"AnEnemyPawnOpposesItInTheCentre"},
     "Kg1 Qe2 Rc1 Rd1 Nd2 Nf3 a2 b3 c4 e3 g2 h2 v Kg8 Qc7 Ra8 Rd8 Nc6 Nf6 a6 "
     "b7 e6 f7 g7 h7, Black to move",
     Side::kBlack,
     "not e6e5",
     ""},
};

class Expansions : public ::testing::TestWithParam<PlanRow> {};

TEST_P(Expansions, AreProposedAsPlayersDo) {
  testing_support::ExpectPlan(DraftExpansions, PlanKind::kExpansion,
                              GetParam());
}

INSTANTIATE_TEST_SUITE_P(Rows, Expansions, ::testing::ValuesIn(kRows),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
