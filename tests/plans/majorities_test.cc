// More pawns against fewer: the candidate first.
#include "tests/plans/pawn_plans.h"

namespace assay {
namespace {

using testing_support::PlanRow;

constexpr PlanRow kRows[] = {
    {{"CandidateFirst"},
     "Kg1 a2 b2 c2 f2 g2 h2 v Kg8 a7 b7 e7 f7 g7 h7",
     Side::kWhite,
     "c2c4 c4c5 b2b4 b4b5",
     "b5"},
    {{"SideNotToMove"},
     "Kg1 Rd1 a2 b2 c2 f2 g2 v Kg8 Rd8 a7 b7 f7 g7 h7",
     Side::kBlack,
     "h7h5 h5h4 g7g5 g5g4",
     "g4"},
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
};

class Majorities : public ::testing::TestWithParam<PlanRow> {};

TEST_P(Majorities, AreProposedAsPlayersDo) {
  testing_support::ExpectPlan(DraftMajorities, PlanKind::kMajority, GetParam());
}

INSTANTIATE_TEST_SUITE_P(Rows, Majorities, ::testing::ValuesIn(kRows),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
