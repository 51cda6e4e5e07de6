// Sieges, on positions of our own making. The preconditions are common
// practice; the two knights and the bishop against the front one of doubled
// pawns are Nimzowitsch's (My System, 1925).
#include <gtest/gtest.h>

#include "tests/support/drafts.h"

namespace assay {
namespace {

using testing_support::CheckDrafts;
using testing_support::DraftRow;
using testing_support::NameOfRow;

class Siege : public ::testing::TestWithParam<DraftRow> {};

TEST_P(Siege, IsFoundOrNot) {
  CheckDrafts(DraftSieges, PlanKind::kSiege, GetParam());
}

INSTANTIATE_TEST_SUITE_P(
    Rows, Siege,
    ::testing::Values(
        DraftRow{{"TwoKnightsAndBishopOnDoubledFront"},
                 "5bk1/p4pp1/2p1n2p/2p5/8/4BN1P/PP1N1PP1/6K1 w - - 0 1",
                 Side::kWhite,
                 "Nb3 Ne5 Nd7",
                 kC5},
        DraftRow{{"OneMoveOutnumbersTheOnlyGuard"},
                 "6k1/p4pp1/2pb3p/2p5/8/4BN1P/PP1N1PP1/6K1 w - - 0 1",
                 Side::kWhite,
                 "Nb3",
                 kC5},
        DraftRow{{"RookComesBehindRookOnBackwardPawn"},
                 "3rr1k1/pp3pp1/3p3p/4p3/4P3/5P2/PP3P1P/3R1RK1 w - - 0 1",
                 Side::kWhite,
                 "Rd2 Rfd1",
                 kD6},
        DraftRow{{"BaseOfALockedChain"},
                 "3rr1k1/pp3pp1/2pp3p/4p3/4P3/5P2/PP3P1P/3R1RK1 w - - 0 1",
                 Side::kWhite,
                 "Rd2 Rfd1",
                 kD6},
        DraftRow{{"SilentWhereAPawnGuards"},
                 "3rr1k1/ppp2pp1/3p3p/4p3/4P3/5P2/PP3P1P/3R1RK1 w - - 0 1",
                 Side::kWhite,
                 "",
                 kD6},
        DraftRow{{"KnightOpensTheFileForTheRook"},
                 "2r3k1/pb3ppp/1pn1p3/8/2P1P3/2PB4/P3QPPP/R5K1 b - - 0 1",
                 Side::kBlack,
                 "Ba6 Na5",
                 kC4},
        DraftRow{{"EdgePawnFixedByARam"},
                 "6k1/1b3pp1/8/p6p/P7/2N5/1P3PPP/5BK1 w - - 0 1",
                 Side::kWhite,
                 "Nb1 Nd2 Nb3",
                 kA5},
        DraftRow{{"SilentOnEdgePawnThatAPawnGuards"},
                 "6k1/2n2pp1/1p6/p6p/P7/2N5/1P3PPP/5BK1 w - - 0 1",
                 Side::kWhite,
                 "",
                 kA5},
        DraftRow{{"LonePawnOfAnOpenFlank"},
                 "6k1/5pp1/7p/p1p5/2P1n3/4B3/1P3PPP/1N4K1 w - - 0 1",
                 Side::kWhite,
                 "Nc3 Na4",
                 kC5}),
    NameOfRow());

// The pawn's owner is told nothing of it.
TEST(SiegeOwner, DoesNotBesiegeItself) {
  const Position position = testing_support::FromFen(
      "6k1/p4pp1/2pb3p/2p5/8/4BN1P/PP1N1PP1/6K1 w - - 0 1");
  EXPECT_TRUE(
      testing_support::DraftsOf(DraftSieges, position, Side::kBlack).empty());
}

}  // namespace
}  // namespace assay
