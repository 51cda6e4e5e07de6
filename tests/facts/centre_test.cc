// The five types of centre, each with a kind of claim of its own, and what is
// none of them. The types are A. Kotov's (Keres and Kotov, The Art of the
// Middle Game, 1964); their exact bounds are ours.
#include "gtest/gtest.h"
#include "tests/support/claims.h"

namespace assay {
namespace {

using testing_support::ClaimRow;

constexpr ClaimRow kCentreClosed[] = {
    {{"TwoRams"},
     ClaimKind::kCentreClosed,
     "Kg1 d4 e5 v Kg8 d5 e6",
     "d4 e5 / d5 e6"},
    {{"OneOfThemOnTheCFile"},
     ClaimKind::kCentreClosed,
     "Kg1 c4 d5 v Kg8 c5 d6",
     "c4 d5 / c5 d6"},
    {{"OneRamAlone"}, ClaimKind::kCentreClosed, "Kg1 d4 v Kg8 d5", ""},
    {{"NoneOnTheInnerFiles"},
     ClaimKind::kCentreClosed,
     "Kg1 c4 d3 e3 f4 v Kg8 c5 d6 e6 f5",
     ""},
    {{"RamOnTheEdgeDoesNotCount"},
     ClaimKind::kCentreClosed,
     "Kg1 d4 h4 v Kg8 d5 h5",
     ""},
    {{"LeverOnTheInnerFiles"},
     ClaimKind::kCentreClosed,
     "Kg1 d4 e5 v Kg8 c5 d5 e6",
     ""},
    {{"LeverFromTheBFile"},
     ClaimKind::kCentreClosed,
     "Kg1 b5 d4 e5 v Kg8 c6 d5 e6",
     "d4 e5 / d5 e6"},
    {{"ThreeRams"},
     ClaimKind::kCentreClosed,
     "Kg1 c4 d5 e4 v Kg8 c5 d6 e5",
     "c4 e4 d5 / c5 e5 d6"},
};

constexpr ClaimRow kCentreOpen[] = {
    {{"NoPawns"}, ClaimKind::kCentreOpen, "Kg1 v Kg8", "holds"},
    {{"OnePawn"}, ClaimKind::kCentreOpen, "Kg1 d4 v Kg8", "holds"},
    {{"OneEach"}, ClaimKind::kCentreOpen, "Kg1 d4 v Kg8 e6", ""},
    {{"TwoOfOneSide"}, ClaimKind::kCentreOpen, "Kg1 d4 e4 v Kg8", ""},
    {{"PawnsBesideIt"},
     ClaimKind::kCentreOpen,
     "Kg1 c4 f4 v Kg8 c7 f7",
     "holds"},
    {{"LeverWithoutASecondPawn"},
     ClaimKind::kCentreOpen,
     "Kg1 d4 v Kg8 c5",
     "holds"},
};

constexpr ClaimRow kCentreTension[] = {
    {{"LeverOnTheInnerFiles"},
     ClaimKind::kCentreTension,
     "Kg1 d4 e3 v Kg8 c5",
     "d4 / c5"},
    {{"TwoTargets"},
     ClaimKind::kCentreTension,
     "Kg1 d4 v Kg8 c5 e5",
     "d4 / c5 e5"},
    {{"BeforeRams"},
     ClaimKind::kCentreTension,
     "Kg1 d4 e5 v Kg8 c5 d5 e6",
     "d4 / c5"},
    {{"LeverFromTheBFile"},
     ClaimKind::kCentreTension,
     "Kg1 b4 d4 v Kg8 c5 d6",
     "d4 / c5"},
    {{"OnlyFromTheBFile"},
     ClaimKind::kCentreTension,
     "Kg1 b4 d3 v Kg8 c5 d6",
     ""},
    {{"OnlyOnTheEdge"}, ClaimKind::kCentreTension, "Kg1 d3 g4 v Kg8 d6 h5", ""},
    {{"OpenIsOpen"}, ClaimKind::kCentreTension, "Kg1 e4 v Kg8 f5", ""},
};

constexpr ClaimRow kCentreFixed[] = {
    {{"OneRam"}, ClaimKind::kCentreFixed, "Kg1 d4 v Kg8 d5", "holds"},
    {{"OneRamAndAPawn"},
     ClaimKind::kCentreFixed,
     "Kg1 d4 e3 v Kg8 c6 d5",
     "holds"},
    {{"TwoRams"}, ClaimKind::kCentreFixed, "Kg1 d4 f4 v Kg8 d5 f5", ""},
    {{"RamOnTheCFile"}, ClaimKind::kCentreFixed, "Kg1 c4 d3 v Kg8 c5 d6", ""},
    {{"LeverBesideIt"}, ClaimKind::kCentreFixed, "Kg1 d4 e4 v Kg8 d5", ""},
    {{"RamAndTwoAgainstOne"},
     ClaimKind::kCentreFixed,
     "Kg1 d3 e4 v Kg8 e5",
     "holds"},
};

constexpr ClaimRow kCentreMobile[] = {
    {{"TwoAgainstOne"},
     ClaimKind::kCentreMobile,
     "Kg1 d4 e4 v Kg8 d6",
     "holds"},
    {{"TwoAgainstNone"},
     ClaimKind::kCentreMobile,
     "Kg1 d4 e4 v Kg8 f7",
     "holds"},
    {{"TwoAgainstTwo"}, ClaimKind::kCentreMobile, "Kg1 d4 e4 v Kg8 d6 e6", ""},
    {{"TwoOnOneFile"}, ClaimKind::kCentreMobile, "Kg1 d3 d4 v Kg8 e6", ""},
    {{"OneRammed"}, ClaimKind::kCentreMobile, "Kg1 d3 e4 v Kg8 e5", ""},
    {{"InTension"}, ClaimKind::kCentreMobile, "Kg1 d4 e4 v Kg8 d5", ""},
    {{"OfBlack"}, ClaimKind::kCentreMobile, "Kg1 e4 v Kg8 d6 e6", "holds"},
};

constexpr ClaimRow kCentreUnresolved[] = {
    {{"OneEach"}, ClaimKind::kCentreUnresolved, "Kg1 d4 v Kg8 e6", "holds"},
    {{"TwoAgainstTwo"},
     ClaimKind::kCentreUnresolved,
     "Kg1 d4 e4 v Kg8 d6 e6",
     "holds"},
    {{"InitialPosition"},
     ClaimKind::kCentreUnresolved,
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
     "holds"},
    {{"TwoOnOneFile"},
     ClaimKind::kCentreUnresolved,
     "Kg1 d3 d4 v Kg8 e6",
     "holds"},
    {{"RamsOutsideAlone"},
     ClaimKind::kCentreUnresolved,
     "Kg1 c4 d3 e3 f4 v Kg8 c5 d6 e6 f5",
     "holds"},
    {{"OnlyFromTheBFile"},
     ClaimKind::kCentreUnresolved,
     "Kg1 b4 d3 v Kg8 c5 d6",
     "holds"},
    {{"Open"}, ClaimKind::kCentreUnresolved, "Kg1 v Kg8", ""},
};

class CentreClaims : public ::testing::TestWithParam<ClaimRow> {};

TEST_P(CentreClaims, HoldExactlyWhereDefined) {
  testing_support::ExpectClaims(GetParam());
}

INSTANTIATE_TEST_SUITE_P(CentreClosed, CentreClaims,
                         ::testing::ValuesIn(kCentreClosed),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(CentreOpen, CentreClaims,
                         ::testing::ValuesIn(kCentreOpen),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(CentreTension, CentreClaims,
                         ::testing::ValuesIn(kCentreTension),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(CentreFixed, CentreClaims,
                         ::testing::ValuesIn(kCentreFixed),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(CentreMobile, CentreClaims,
                         ::testing::ValuesIn(kCentreMobile),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(CentreUnresolved, CentreClaims,
                         ::testing::ValuesIn(kCentreUnresolved),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
