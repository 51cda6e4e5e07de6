// Trades, on positions of our own making; the reasons are common practice.
#include <gtest/gtest.h>

#include "tests/support/drafts.h"

namespace assay {
namespace {

using testing_support::CheckDrafts;
using testing_support::DraftRow;
using testing_support::DraftsOf;
using testing_support::FromFen;
using testing_support::NameOfRow;

class Trade : public ::testing::TestWithParam<DraftRow> {};

TEST_P(Trade, IsFoundOrNot) {
  CheckDrafts(DraftTrades, PlanKind::kTrade, GetParam());
}

INSTANTIATE_TEST_SUITE_P(
    Rows, Trade,
    ::testing::Values(
        DraftRow{{"BadBishopGoesOutByAPawnFirst"},
                 "rnbq1rk1/pp2bppp/4p3/3pP3/3P4/3B1N2/PP3PPP/R1BQ1RK1 b - - "
                 "0 1",
                 Side::kBlack,
                 "b6 Ba6",
                 kD3},
        DraftRow{{"BadBishopGoesOut"},
                 "rnbq1rk1/p3bppp/1p2p3/3pP3/3P4/3B1N2/PP3PPP/R1BQ1RK1 b - "
                 "- 0 1",
                 Side::kBlack,
                 "Ba6",
                 kD3},
        DraftRow{{"SilentWhereTheBishopIsNotBad"},
                 "rnbq1rk1/p3bppp/1p6/3p4/3P4/3B1N2/PP3PPP/R1BQ1RK1 b - - 0 "
                 "1",
                 Side::kBlack,
                 "",
                 kD3},
        DraftRow{{"PieceAheadOffersQueens"},
                 "r4rk1/pp1n1ppp/8/q7/8/2NB4/PP3PPP/R2Q1RK1 w - - 0 1",
                 Side::kWhite,
                 "Qa4",
                 kA5},
        DraftRow{{"SilentWherePiecesAreEven"},
                 "r4rk1/pp1n1ppp/4n3/q7/8/2NB4/PP3PPP/R2Q1RK1 w - - 0 1",
                 Side::kWhite,
                 "",
                 kA5},
        DraftRow{{"KnightForOneOfTwoBishops"},
                 "2r2rk1/pp2bppp/4b3/8/4P3/2N2N2/PP3PPP/2R2RK1 w - - 0 1",
                 Side::kWhite,
                 "Nd5",
                 kE7},
        DraftRow{{"SilentWithoutThePair"},
                 "2r2rk1/pp2bppp/4n3/8/4P3/2N2N2/PP3PPP/2R2RK1 w - - 0 1",
                 Side::kWhite,
                 "",
                 kE7},
        DraftRow{{"BadBishopAfterAKnightStepsAside"},
                 "r1b2rk1/pp1nbpp1/3p1n1p/2pPp3/2P1P3/2NB2P1/PP2NP1P/R1B2RK1 "
                 "b - - 0 1",
                 Side::kBlack,
                 "Ne8 Bg5",
                 kC1},
        DraftRow{{"BishopThatHoldsWhatThePawnsLeave"},
                 "r1b2rk1/pp2b1pp/2p1pn2/3p1p2/P1PP4/1P3NP1/4PPBP/R1B2RK1 w "
                 "- - 0 1",
                 Side::kWhite,
                 "Ba3",
                 kE7},
        DraftRow{{"BishopBesideTheCastledKing"},
                 "r4rk1/pppq1ppp/2npbn2/4p3/2P5/2NP1NP1/PP2PPBP/R2Q1RK1 b - - "
                 "0 1",
                 Side::kBlack,
                 "Bh3",
                 kG2},
        DraftRow{{"GuardOfTheSquareForABishopThatIsNot"},
                 "r4rk1/1p1nbppp/p2p1n2/4p1B1/4P3/2N2N2/PPP2PPP/R4RK1 w - - "
                 "0 1",
                 Side::kWhite,
                 "Bxf6",
                 kF6},
        DraftRow{{"GuardOfTheCentralPawn"},
                 "3r1rk1/pp2pp1p/1qn3p1/8/3PP1b1/4BN2/PP3PPP/R2Q1RK1 b - - 0 "
                 "1",
                 Side::kBlack,
                 "Bxf3",
                 kF3},
        DraftRow{{"TheOnlyGuardOfTheOutpost"},
                 "3r2k1/pp3ppp/3p1n2/4p3/4P3/2N1B3/PP3PPP/3R2K1 w - - 0 1",
                 Side::kWhite,
                 "Bg5",
                 kF6}),
    NameOfRow());

TEST(TradeReasons, SayWhichBishopIsBad) {
  const auto drafts = DraftsOf(
      DraftTrades,
      FromFen("rnbq1rk1/p3bppp/1p2p3/3pP3/3P4/3B1N2/PP3PPP/R1BQ1RK1 b - - 0 "
              "1"),
      Side::kBlack);
  ASSERT_EQ(drafts.size(), 1U);
  EXPECT_EQ(drafts[0].claims[0].kind, ClaimKind::kBadBishop);
  EXPECT_EQ(drafts[0].claims[0].squares, SquareList({kC8}));
}

}  // namespace
}  // namespace assay
