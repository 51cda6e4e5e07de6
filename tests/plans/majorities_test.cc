// More pawns against fewer: the candidate first.
#include "tests/plans/pawn_plans.h"

namespace assay {
namespace {

using testing_support::PlanRow;

constexpr PlanRow kRows[] = {
    {{"CandidateFirst"},
     "Kg1 a2 b2 c2 f2 g2 h2 v Kg8 a7 b7 e7 f7 g7 h7",
     Side::kWhite,
     "c2c4 b2b4 c4c5",
     "c5"},
    {{"SideNotToMove"},
     "Kg1 Rd1 a2 b2 c2 f2 g2 v Kg8 Rd8 a7 b7 f7 g7 h7",
     Side::kBlack,
     "h7h5 g7g5 h5h4",
     "h4"},
    {{"Doubled"},
     "Kg1 a2 b2 b3 f2 g2 h2 v Kg8 a7 b7 f7 g7 h7 e7",
     Side::kWhite,
     "",
     ""},
    {{"AsMany"}, "Kg1 a2 b2 g2 h2 v Kg8 a7 b7 g7 h7", Side::kWhite, "", ""},
    {{"PassedAlready"},
     "Kg1 a2 b2 c5 g2 h2 v Kg8 a7 g7 h7",
     Side::kWhite,
     "",
     ""},
    {{"BeforeTheOwnKing"},
     "Kg1 Qd1 Rd2 a2 b2 f2 g2 h2 v Kg8 Qd8 Rd7 a7 b7 c7 g7 h7",
     Side::kWhite,
     "",
     ""},
    {{"NeighbourFirstWhereTheCandidateWouldBeChased"},
     "Kg1 Qe2 Rc1 Rd1 Nd2 Nf3 a2 b3 c4 f2 g2 h2 v Kg8 Qc7 Ra8 Rd8 Nc6 Nf6 a6 "
     "b7 e6 f7 g7 h7",
     Side::kWhite,
     "a2a3 b3b4 c4c5",
     "c5"},
    {{"ANeighbourThatStaysBehindIsNoPlan"},
     "Kg1 Re1 Bd3 Nc3 Nf3 a4 b2 d5 e4 f4 g2 h2 v Kg8 Rb8 Bc8 Nd7 Nf6 a6 b7 c5 "
     "d6 f7 g6 h7, Black to move",
     Side::kBlack,
     "not b7b6",
     ""},
};

class Majorities : public ::testing::TestWithParam<PlanRow> {};

TEST_P(Majorities, AreProposedAsPlayersDo) {
  testing_support::ExpectPlan(DraftMajorities, PlanKind::kMajority, GetParam());
}

INSTANTIATE_TEST_SUITE_P(Rows, Majorities, ::testing::ValuesIn(kRows),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
