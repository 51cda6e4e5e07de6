// Passed pawns, advanced or blockaded.
#include "tests/plans/pawn_plans.h"

namespace assay {
namespace {

using testing_support::PlanRow;

constexpr PlanRow kRows[] = {
    {{"RookBehind"},
     "Kg1 Rd1 d5 f2 g2 h2 v Kg8 Ra7 f7 g7 h7",
     Side::kWhite,
     "d5d6 d6d7",
     "d7"},
    {{"NeedsEscort"},
     "Kg1 Rf1 d5 f2 g2 h2 v Kg8 Rd8 f7 g7 h7",
     Side::kWhite,
     "f1d1 d5d6",
     "d6"},
    {{"KnightBlockades"},
     "Kg1 Nb2 f2 g2 h2 v Kg8 Nb6 d4 f7 g7 h7",
     Side::kWhite,
     "b2d3",
     "d3 d4"},
    {{"SideNotToMove"},
     "Kg1 Nb2 f2 g2 h2 v Kg8 Nb6 d4 f7 g7 h7, Black to move",
     Side::kWhite,
     "b2d3",
     "d3 d4"},
    {{"AlsoTheFirstStepAlone"},
     "Kg1 Rd1 d5 f2 g2 h2 v Kg8 Ra7 f7 g7 h7",
     Side::kWhite,
     "d5d6",
     "d6"},
    {{"RightBeforeItThoughAKnightStandsFurtherOn"},
     "Kg1 Nd2 Nf3 f2 g2 h2 v Kg8 Nb6 c5 d4 f7 g7 h7",
     Side::kWhite,
     "f3** **d3",
     "d3 d4"},
    {{"NeverTheQueen"},
     "Kh1 Qd1 g2 h2 v Kg8 Qf6 Rd8 d4 g7 h7",
     Side::kWhite,
     "",
     ""},
    {{"BlockadedAlready"},
     "Kg1 Nd3 f2 g2 h2 v Kg8 Nb6 d4 f7 g7 h7",
     Side::kWhite,
     "",
     ""},
    {{"EdgePawn"}, "Kb3 a5 h2 v Kg7 h7", Side::kWhite, "a5a6 a6a7 a7a8", "a8"},
    {{"TooEarly"},
     "Kg1 Qd1 Ra1 Rf1 Bc1 Bd3 Nc3 Nf3 c2 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Be7 Be6 "
     "Nc6 Nf6 e5 f7 g7 h7",
     Side::kWhite,
     "",
     ""},
};

class Passers : public ::testing::TestWithParam<PlanRow> {};

TEST_P(Passers, AreProposedAsPlayersDo) {
  testing_support::ExpectPlan(DraftPassers, PlanKind::kPasser, GetParam());
}

INSTANTIATE_TEST_SUITE_P(Rows, Passers, ::testing::ValuesIn(kRows),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
