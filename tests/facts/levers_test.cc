// Claims of pawns that meet: levers, the moves that make them, and rams.
#include "gtest/gtest.h"
#include "tests/support/claims.h"

namespace assay {
namespace {

using testing_support::ClaimRow;

constexpr ClaimRow kLever[] = {
    {{"AttackEachOther"},
     ClaimKind::kLever,
     "Kg1 d4 v Kg8 e5",
     "White d4 / e5; Black e5 / d4"},
    {{"Rammed"}, ClaimKind::kLever, "Kg1 e4 v Kg8 e5", ""},
    {{"TwoTargets"},
     ClaimKind::kLever,
     "Kg1 d4 v Kg8 c5 e5",
     "White d4 / c5 e5; Black c5 / d4; Black e5 / d4"},
    {{"OnTheEdge"},
     ClaimKind::kLever,
     "Kg1 a4 v Kg8 b5",
     "White a4 / b5; Black b5 / a4"},
    {{"EdgesDoNotMeet"}, ClaimKind::kLever, "Kg1 h4 v Kg8 a6", ""},
    {{"PinsAreIgnored"},
     ClaimKind::kLever,
     "Ke1 e4 v Kg8 Re8 d5",
     "White e4 / d5; Black d5 / e4"},
    {{"EnPassantNeverCounts"},
     ClaimKind::kLever,
     "4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1",
     ""},
};

constexpr ClaimRow kLeverMove[] = {
    {{"OneStepOfBothSides"},
     ClaimKind::kLeverMove,
     "Kg1 d4 v Kg8 c6",
     "White d4 d5 / c6; Black c6 c5 / d4"},
    {{"TwoSteps"},
     ClaimKind::kLeverMove,
     "Kg1 c2 v Kg8 d5",
     "White c2 c4 / d5"},
    {{"OneStepAndTwo"},
     ClaimKind::kLeverMove,
     "Kg1 e2 v Kg8 d4 f5",
     "White e2 e3 / d4; White e2 e4 / f5; Black d4 d3 / e2"},
    {{"TwoTargets"},
     ClaimKind::kLeverMove,
     "Kg1 d3 v Kg8 c5 e5",
     "White d3 d4 / c5 e5; Black c5 c4 / d3; Black e5 e4 / d3"},
    {{"BlockedByAPiece"},
     ClaimKind::kLeverMove,
     "Kg1 Nd5 d4 v Kg8 c6",
     "Black c6 c5 / d4"},
    {{"TwoStepsBlockedOnTheFirst"},
     ClaimKind::kLeverMove,
     "Kg1 Nc3 c2 v Kg8 d5",
     ""},
    {{"PinnedOnADiagonal"},
     ClaimKind::kLeverMove,
     "Ke1 d2 v Kg8 Ba5 c4",
     "Black c4 c3 / d2"},
    {{"PinnedOnItsFile"},
     ClaimKind::kLeverMove,
     "Ke1 e3 v Kg8 Re8 d5",
     "White e3 e4 / d5; Black d5 d4 / e3"},
    {{"InCheckThereIsNone"}, ClaimKind::kLeverMove, "Ke1 c2 v Kg8 Re8 d5", ""},
    {{"NoneForTheOtherSideEither"},
     ClaimKind::kLeverMove,
     "Ke1 d4 v Kg8 Re8 c6",
     ""},
    {{"OnTheEdge"},
     ClaimKind::kLeverMove,
     "Kg1 a2 v Kg8 b5",
     "White a2 a4 / b5"},
    {{"TwoStepsFromTheSecondRankOnly"},
     ClaimKind::kLeverMove,
     "Kg1 c3 v Kg8 d6",
     ""},
};

constexpr ClaimRow kRam[] = {
    {{"HeadToHead"},
     ClaimKind::kRam,
     "Kg1 d4 v Kg8 d5",
     "White d4 / d5; Black d5 / d4"},
    {{"ASquareBetween"}, ClaimKind::kRam, "Kg1 d3 v Kg8 d5", ""},
    {{"APieceAhead"}, ClaimKind::kRam, "Kg1 d4 v Kg8 Nd5", ""},
    {{"OwnPawnAhead"}, ClaimKind::kRam, "Kg1 d3 d4 v Kg8", ""},
    {{"OnTheEdges"},
     ClaimKind::kRam,
     "Kg1 a4 h3 v Kg8 a5 h4",
     "White a4 / a5; White h3 / h4; Black a5 / a4; Black h4 / h3"},
    {{"DoubledBehind"},
     ClaimKind::kRam,
     "Kg1 d3 d4 v Kg8 d5 d6",
     "White d4 / d5; Black d5 / d4"},
};

class LeverClaims : public ::testing::TestWithParam<ClaimRow> {};

TEST_P(LeverClaims, HoldExactlyWhereDefined) {
  testing_support::ExpectClaims(GetParam());
}

INSTANTIATE_TEST_SUITE_P(Lever, LeverClaims, ::testing::ValuesIn(kLever),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(LeverMove, LeverClaims,
                         ::testing::ValuesIn(kLeverMove),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Ram, LeverClaims, ::testing::ValuesIn(kRam),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
