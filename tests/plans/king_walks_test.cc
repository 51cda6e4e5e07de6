// King walks, on positions of our own making; the goals are common practice.
#include <gtest/gtest.h>

#include "tests/support/drafts.h"

namespace assay {
namespace {

using testing_support::CheckDrafts;
using testing_support::DraftRow;
using testing_support::NameOfRow;

class KingWalk : public ::testing::TestWithParam<DraftRow> {};

TEST_P(KingWalk, IsFoundOrNot) {
  CheckDrafts(DraftKingWalks, PlanKind::kKingWalk, GetParam());
}

INSTANTIATE_TEST_SUITE_P(
    Rows, KingWalk,
    ::testing::Values(
        DraftRow{{"ToTheCentre"},
                 "8/pp3ppp/4k3/8/8/8/PPP2PPP/6K1 w - - 0 1",
                 Side::kWhite,
                 "Kf1 Ke2 Kd3 Kd4",
                 kD4},
        DraftRow{{"InRookEndingsToo"},
                 "2r3k1/pp3ppp/8/8/8/8/PPP2PPP/2R3K1 w - - 0 1",
                 Side::kBlack,
                 "Kf8 Ke7 Kd6 Kd5",
                 kD5},
        DraftRow{{"SilentWithQueens"},
                 "3q2k1/5ppp/8/p7/8/8/1P3PPP/3K2Q1 w - - 0 1",
                 Side::kWhite,
                 "",
                 kD4},
        DraftRow{{"SilentWithManyPieces"},
                 "2r1r1k1/pp1n1ppp/2b5/8/8/2B5/PPPN1PPP/2R1R1K1 w - - 0 1",
                 Side::kWhite,
                 "",
                 kD4},
        DraftRow{{"SilentWhereItStandsThere"},
                 "8/pp3ppp/8/3k4/8/3K4/PPP2PPP/8 w - - 0 1",
                 Side::kWhite,
                 "",
                 kD4},
        DraftRow{{"AsNearTheCentreAsIsSafe"},
                 "3r2k1/pp3ppp/4pn2/8/8/4PN2/PP3PPP/3R2K1 w - - 0 1",
                 Side::kWhite,
                 "Kf1 Ke2",
                 kE2},
        DraftRow{{"SilentWhereTheCentreComesNoNearer"},
                 "3r2k1/pp3ppp/4pn2/8/8/4PN2/PP2KPPP/3R4 w - - 0 1",
                 Side::kWhite,
                 "",
                 kE2},
        DraftRow{{"InFrontOfThePassedPawn"},
                 "8/5ppp/4k3/8/p7/8/3K1PPP/8 w - - 0 1",
                 Side::kWhite,
                 "Kc3 Kb4 Ka3",
                 kA4},
        DraftRow{{"BesideItsOwnPassedPawn"},
                 "8/p4ppp/8/3k4/8/2P5/P4PPP/3K4 w - - 0 1",
                 Side::kWhite,
                 "Kc2 Kd3",
                 kC3},
        DraftRow{{"ToTheWeakEdgePawn"},
                 "6k1/5ppp/8/p7/8/8/1P3PPP/3K4 w - - 0 1",
                 Side::kWhite,
                 "Kc2 Kb3 Ka4",
                 kA5}),
    NameOfRow());

}  // namespace
}  // namespace assay
