// Claims of passed pawns and of pawns that may become passed.
#include "gtest/gtest.h"
#include "tests/support/claims.h"

namespace assay {
namespace {

using testing_support::ClaimRow;

constexpr ClaimRow kPassed[] = {
    {{"EnemyPawnBehind"},
     ClaimKind::kPassed,
     "Kg1 d5 v Kg8 d3",
     "White d5; Black d3"},
    {{"SentryOnTheNextFile"}, ClaimKind::kPassed, "Kg1 d5 v Kg8 e6", ""},
    {{"EnemyPawnBesideIt"},
     ClaimKind::kPassed,
     "Kg1 d5 v Kg8 e5",
     "White d5; Black e5"},
    {{"TwoFilesAway"},
     ClaimKind::kPassed,
     "Kg1 d5 v Kg8 f6",
     "White d5; Black f6"},
    {{"FrontOneOfTwo"}, ClaimKind::kPassed, "Kg1 d4 d5 v Kg8", "White d5"},
    {{"OnTheEdge"}, ClaimKind::kPassed, "Kg1 a5 v Kg8 b7 h7", "Black h7"},
    {{"EdgesAreNoNeighbours"},
     ClaimKind::kPassed,
     "Kg1 h4 v Kg8 a6",
     "White h4; Black a6"},
    {{"OnTheSeventhRank"},
     ClaimKind::kPassed,
     "Kg1 a7 v Kg8 b7",
     "White a7; Black b7"},
    {{"PiecesDoNotStopIt"}, ClaimKind::kPassed, "Kg1 d5 v Kg8 Nd6", "White d5"},
};

constexpr ClaimRow kProtectedPassed[] = {
    {{"GuardedByAPawn"},
     ClaimKind::kProtectedPassed,
     "Kg1 d5 c4 v Kg8",
     "White d5"},
    {{"GuardedByAPieceAlone"},
     ClaimKind::kProtectedPassed,
     "Kg1 Bf3 d5 v Kg8",
     ""},
    {{"PawnBesideIt"}, ClaimKind::kProtectedPassed, "Kg1 c5 d5 v Kg8", ""},
    {{"NotPassed"}, ClaimKind::kProtectedPassed, "Kg1 c4 d5 v Kg8 d7", ""},
    {{"OnTheEdge"}, ClaimKind::kProtectedPassed, "Kg1 a5 b4 v Kg8", "White a5"},
    {{"OfBothSides"},
     ClaimKind::kProtectedPassed,
     "Kg1 c4 d5 v Kg8 f5 g6",
     "White d5; Black f5"},
};

constexpr ClaimRow kConnectedPassed[] = {
    {{"SideBySide"},
     ClaimKind::kConnectedPassed,
     "Kg1 c4 d4 v Kg8",
     "White c4 d4"},
    {{"OneRankApart"},
     ClaimKind::kConnectedPassed,
     "Kg1 c4 d5 v Kg8",
     "White c4 d5"},
    {{"TwoRanksApart"}, ClaimKind::kConnectedPassed, "Kg1 c3 d5 v Kg8", ""},
    {{"ThreeAbreast"},
     ClaimKind::kConnectedPassed,
     "Kg1 c4 d4 e4 v Kg8",
     "White c4 d4; White d4 e4"},
    {{"AFileBetween"}, ClaimKind::kConnectedPassed, "Kg1 c4 e4 v Kg8", ""},
    {{"OneIsNotPassed"}, ClaimKind::kConnectedPassed, "Kg1 c4 d4 v Kg8 b7", ""},
    {{"OnTheEdgesOfBothSides"},
     ClaimKind::kConnectedPassed,
     "Kg1 g5 h5 v Kg8 a3 b3",
     "White g5 h5; Black a3 b3"},
};

constexpr ClaimRow kOutsidePassed[] = {
    {{"FarFromTheRest"},
     ClaimKind::kOutsidePassed,
     "Kg1 a4 f2 g2 v Kg8 f7 g7",
     "White a4"},
    {{"JustThreeFilesAway"},
     ClaimKind::kOutsidePassed,
     "Kg1 a4 d2 v Kg8 d7",
     "White a4"},
    {{"TwoFilesAway"}, ClaimKind::kOutsidePassed, "Kg1 a4 c2 v Kg8 c7", ""},
    {{"NoOtherOwnPawn"}, ClaimKind::kOutsidePassed, "Kg1 a4 v Kg8 g7", ""},
    {{"NoEnemyPawn"}, ClaimKind::kOutsidePassed, "Kg1 a4 g2 v Kg8", ""},
    {{"NotPassed"}, ClaimKind::kOutsidePassed, "Kg1 a4 f2 v Kg8 a7 f7", ""},
    {{"OfBothSides"},
     ClaimKind::kOutsidePassed,
     "Kg1 a4 e4 v Kg8 e5 h5",
     "White a4; Black h5"},
};

constexpr ClaimRow kCandidate[] = {
    {{"HelperForTheSentry"},
     ClaimKind::kCandidate,
     "Kg1 d4 e4 v Kg8 e6",
     "White d4"},
    {{"TwoSentriesOneHelper"},
     ClaimKind::kCandidate,
     "Kg1 d4 e4 v Kg8 c6 e6",
     ""},
    {{"HelperAheadDoesNotHelp"},
     ClaimKind::kCandidate,
     "Kg1 d4 e5 v Kg8 e6",
     ""},
    {{"NoHelper"}, ClaimKind::kCandidate, "Kg1 d4 v Kg8 e6", ""},
    {{"OwnPawnAhead"},
     ClaimKind::kCandidate,
     "Kg1 d4 d5 e4 v Kg8 e7",
     "White d5"},
    {{"EnemyPawnAhead"}, ClaimKind::kCandidate, "Kg1 d4 e4 v Kg8 d7 e6", ""},
    {{"OnTheEdge"}, ClaimKind::kCandidate, "Kg1 a4 b4 v Kg8 b6", "White a4"},
    {{"OfBothSides"},
     ClaimKind::kCandidate,
     "Kg1 d4 e4 v Kg8 e6 f6",
     "White d4; Black f6"},
    {{"PassedIsNoCandidate"}, ClaimKind::kCandidate, "Kg1 d4 e4 v Kg8", ""},
};

class PassedPawnClaims : public ::testing::TestWithParam<ClaimRow> {};

TEST_P(PassedPawnClaims, HoldExactlyWhereDefined) {
  testing_support::ExpectClaims(GetParam());
}

INSTANTIATE_TEST_SUITE_P(Passed, PassedPawnClaims, ::testing::ValuesIn(kPassed),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(ProtectedPassed, PassedPawnClaims,
                         ::testing::ValuesIn(kProtectedPassed),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(ConnectedPassed, PassedPawnClaims,
                         ::testing::ValuesIn(kConnectedPassed),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(OutsidePassed, PassedPawnClaims,
                         ::testing::ValuesIn(kOutsidePassed),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Candidate, PassedPawnClaims,
                         ::testing::ValuesIn(kCandidate),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
