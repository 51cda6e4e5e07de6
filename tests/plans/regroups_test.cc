// Regroups, on positions of our own making; the preconditions are common
// practice; the blockade is Nimzowitsch's (My System, 1925).
#include <gtest/gtest.h>

#include "tests/support/drafts.h"

namespace assay {
namespace {

using testing_support::CheckDrafts;
using testing_support::DraftRow;
using testing_support::NameOfRow;

class Regroup : public ::testing::TestWithParam<DraftRow> {};

TEST_P(Regroup, IsFoundOrNot) {
  CheckDrafts(DraftRegroups, PlanKind::kRegroup, GetParam());
}

INSTANTIATE_TEST_SUITE_P(
    Rows, Regroup,
    ::testing::Values(
        DraftRow{{"KnightToOutpostInThreeMoves"},
                 "r2q1rk1/pp3p1p/3p2p1/4p3/4P3/3Q4/PP1N1PPP/R4RK1 w - - 0 1",
                 Side::kWhite,
                 "Nb1 Nc3 Nd5",
                 kD5},
        DraftRow{{"SilentWhereAPawnTurnsItAway"},
                 "r2q1rk1/p4p1p/2pp2p1/1p2p3/4P3/3Q4/PP1N1PPP/R4RK1 w - - 0 1",
                 Side::kWhite,
                 "",
                 kD5},
        DraftRow{{"SilentWhereItStandsThere"},
                 "r2q1rk1/pp3ppp/3p4/3Np3/4P3/3Q4/PP3PPP/R4RK1 w - - 0 1",
                 Side::kWhite,
                 "",
                 kD5},
        DraftRow{{"RimKnightToOutpost"},
                 "r4rk1/1p2qppp/3p4/p3p3/P1P1P3/N5P1/1P3P1P/R2Q1RK1 w - - "
                 "0 1",
                 Side::kWhite,
                 "Nb5",
                 kB5},
        DraftRow{{"CornerKnight"},
                 "n5k1/pp3ppp/4p3/3pP3/3P4/5N2/PP3PPP/6K1 b - - 0 1",
                 Side::kBlack,
                 "Nb6",
                 kB6},
        DraftRow{{"BadBishopOutOfItsPawns"},
                 "r4rk1/pp1bq1pp/2pnpn2/3p1p2/3P1P2/3NPNP1/PPQ3BP/R4RK1 b "
                 "- - 0 1",
                 Side::kBlack,
                 "Be8 Bh5",
                 kH5},
        DraftRow{{"PostBehindAPawnThatOnlyAShelterPawnDisputes"},
                 "r1bq2k1/pp2nppp/2n5/8/3P4/2P2N2/P4PPP/R2Q1RK1 w - - 0 1",
                 Side::kWhite,
                 "Ne5",
                 kE5},
        DraftRow{{"SilentWhereAFreePawnTurnsTheKnightAway"},
                 "r1bq3k/pp2nppp/2n5/8/3P4/2P2N2/P4PPP/R2Q1RK1 w - - 0 1",
                 Side::kWhite,
                 "",
                 kE5},
        DraftRow{{"PostThatOnlyTheGuardOfABackwardPawnDisputes"},
                 "r2q1rk1/1p2ppbp/p2p1np1/8/4P3/2N2P2/PPQ3PP/R4RK1 w - - 0 1",
                 Side::kWhite,
                 "Nd5",
                 kD5},
        DraftRow{{"NoPostWhereMoreAttackThanGuard"},
                 "r2q1rk1/1p2ppbp/p2p1np1/8/8/2N2P2/PPQ1P1PP/R4RK1 w - - 0 1",
                 Side::kWhite,
                 "",
                 kD5},
        DraftRow{{"BlockadeOfIsolatedQueenPawn"},
                 "r2q1rk1/pp2bppp/2n2n2/3p4/8/2N1PN2/PP2BPPP/R2Q1RK1 w - - "
                 "0 1",
                 Side::kWhite,
                 "Nd4",
                 kD4},
        DraftRow{{"NoBlockadeWithoutIsolatedPawn"},
                 "r2q1rk1/pp2bppp/2n1pn2/3p4/8/2N1PN2/PP2BPPP/R2Q1RK1 w - - "
                 "0 1",
                 Side::kWhite,
                 "",
                 kD4},
        DraftRow{{"SilentInTheOpening"},
                 "rnbqkbnr/pp2pppp/2p5/3p4/3PP3/8/PPP2PPP/RNBQKBNR w KQkq - "
                 "0 1",
                 Side::kWhite,
                 "",
                 kF3}),
    NameOfRow());

}  // namespace
}  // namespace assay
