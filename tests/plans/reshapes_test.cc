// Opening and closing the centre.
#include "tests/plans/pawn_plans.h"

namespace assay {
namespace {

using testing_support::PlanRow;

constexpr PlanRow kRows[] = {
    {{"TwoBishopsOpen"},
     "Kg1 Qe2 Ra1 Re1 Bb3 Be3 Nf3 a2 b2 c2 d3 e4 f2 g2 h2 v Kg8 Qe7 Ra8 Re8 "
     "Bd7 Nc6 Ng6 a7 b7 c7 e5 f7 g7 h7",
     Side::kWhite,
     "d3d4",
     "d4"},
    {{"NobodyWishes"},
     "Kg1 Qd1 Ra1 Re1 Bb3 Nc3 a2 b2 c2 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Re8 Bb6 Nc6 "
     "a7 b7 c7 e5 f7 g7 h7",
     Side::kWhite,
     "",
     ""},
    {{"KnightsClose"},
     "Kg1 Qd1 Ra1 Rf1 Nc3 Nf3 a2 b2 c2 d4 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Bg7 "
     "Bd7 a7 b7 c7 d6 e5 f7 g6 h7",
     Side::kWhite,
     "d4d5",
     "d5"},
    {{"SideNotToMove"},
     "Kg1 Qd1 Ra1 Rf1 Nc3 Nf3 a2 b2 c2 d4 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Bg7 "
     "Bd7 a7 b7 c7 d6 e5 f7 g6 h7, Black to move",
     Side::kWhite,
     "d4d5",
     "d5"},
    {{"BishopsExchangeBeforeItIsLocked"},
     "Kg1 Qd1 Ra1 Rf1 Nc3 Nf3 a2 b2 c2 d4 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Bg7 "
     "Bd7 a7 b7 c7 d6 e5 f7 g6 h7, Black to move",
     Side::kBlack,
     "e5d4",
     "d4"},
    {{"NothingToExchange"},
     "Kg1 Qd1 Ra1 Rf1 Nc3 Nf3 a2 b2 c2 d3 e4 f2 g2 h2 v Kg8 Qd8 Ra8 Rf8 Bg7 "
     "Bd7 a7 b7 c7 d6 e5 f7 g6 h7, Black to move",
     Side::kBlack,
     "",
     ""},
    {{"NotAnExchangeThatLosesThePawn"},
     "Kg1 Qd2 Rd1 Rf1 Nc3 Nf3 a2 b2 c2 d4 e4 f2 g2 h2 v Kg8 Qe8 Ra8 Rf8 Bg7 "
     "Bd7 a7 b7 c7 d6 e5 f7 g6 h7, Black to move",
     Side::kBlack,
     "not d6d5",
     ""},
    {{"NotInCheck"},
     "Kg1 Qd1 Ra1 Re1 Bb3 Bc1 a2 b2 c2 e4 g2 h2 v Kg8 Qd4 Ra8 Re8 Nc6 Ng6 a7 "
     "b7 c7 e5 f7 g7 h7",
     Side::kWhite,
     "",
     ""},
};

class Reshapes : public ::testing::TestWithParam<PlanRow> {};

TEST_P(Reshapes, AreProposedAsPlayersDo) {
  testing_support::ExpectPlan(DraftReshapes, PlanKind::kReshape, GetParam());
}

INSTANTIATE_TEST_SUITE_P(Rows, Reshapes, ::testing::ValuesIn(kRows),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
