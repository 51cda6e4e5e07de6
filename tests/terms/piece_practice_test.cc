// What every trainer teaches of pieces, kings and development, asked of the
// evaluator. The facts are common practice, no source; the positions are our
// own, each also tried with the colours swapped.
#include "gtest/gtest.h"
#include "tests/support/from_pieces.h"
#include "tests/support/ledgers.h"
#include "tests/support/pairs.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::FromPieces;
using testing_support::NameOfRow;
using testing_support::Pair;
using testing_support::Pairs;
using testing_support::ScoreFor;
using testing_support::SumFor;

// The same pawns; the only bishop is of the other colour or of theirs.
constexpr Pair kColourOfTheBishop[] = {
    {{"LockedOnLightSquares"},
     "Kg1 Rf1 Be3 c4 d5 e4 g2 v Kg8 Rf8 Nf6 c5 d6 e5 g7",
     "Kg1 Rf1 Be2 c4 d5 e4 g2 v Kg8 Rf8 Nf6 c5 d6 e5 g7"},
    {{"LockedOnDarkSquares"},
     "Kg1 Qd1 Bc2 c3 d4 e5 a2 v Kg8 Qd8 Nb6 c4 d5 e6 a7",
     "Kg1 Qd1 Bd2 c3 d4 e5 a2 v Kg8 Qd8 Nb6 c4 d5 e6 a7"},
    {{"InAnEnding"},
     "Kf2 Bd3 d4 f4 a3 b4 v Ke7 Nc6 d5 f5 a6 b5",
     "Kf2 Be3 d4 f4 a3 b4 v Ke7 Nc6 d5 f5 a6 b5"},
};

class ColourOfTheBishop : public Pairs {};

TEST_P(ColourOfTheBishop, MakesItBad) { ExpectBetterBy({TermId::kBadBishop}); }

// What is left is the better half: one is content to have traded the other.
TEST_P(ColourOfTheBishop, TellsWhichBishopToTrade) { ExpectBetter(ScoreFor); }

INSTANTIATE_TEST_SUITE_P(Positions, ColourOfTheBishop,
                         ::testing::ValuesIn(kColourOfTheBishop), NameOfRow());

// White's queen is out; fewer or more of Black's pieces can go at it.
constexpr Pair kEarlyQueen[] = {
    {{"OnH5"},
     "rnbqkb1r/ppppppp1/7p/7Q/4P3/8/PPPP1PPP/RNB1KBNR w KQkq - 0 3",
     "rnbqkbnr/pppp1ppp/8/4p2Q/4P3/8/PPPP1PPP/RNB1KBNR w KQkq - 0 3"},
    {{"OnG4"},
     "r1bqkbnr/pppp1ppp/2n5/8/4P3/3Q4/PPP2PPP/RNB1KBNR w KQkq - 0 4",
     "r1bqkbnr/pppp1ppp/2n5/8/4P1Q1/8/PPP2PPP/RNB1KBNR w KQkq - 0 4"},
    {{"OnD3"},
     "r1bqkbnr/pp3ppp/2n5/2pp4/8/5Q2/PPPP1PPP/RNB1KBNR w KQkq - 0 4",
     "r1bqkbnr/pp3ppp/2n5/2pp4/8/3Q4/PPPP1PPP/RNB1KBNR w KQkq - 0 4"},
};

class EarlyQueen : public Pairs {};

TEST_P(EarlyQueen, LosesMoreTimeToMoreChasers) {
  ExpectBetterBy({TermId::kEarlyQueen});
  // Time is lost in both.
  EXPECT_LT(SumFor(FromPieces(GetParam().better), Side::kWhite,
                   {TermId::kEarlyQueen}),
            0);
}

INSTANTIATE_TEST_SUITE_P(Positions, EarlyQueen,
                         ::testing::ValuesIn(kEarlyQueen), NameOfRow());

constexpr Pair kRookFiles[] = {
    {{"OpenOverHalfOpen"},
     "Kg1 Rc1 a2 e4 f2 g2 v Kg8 Rd8 a7 e6 f7 g7",
     "Kg1 Rc1 a2 e4 f2 g2 v Kg8 Rd8 a7 c6 f7 g7"},
    {{"OpenOverHalfOpenWithQueens"},
     "Kg1 Qe2 Rd1 b2 c3 g2 h2 v Kg8 Qe7 Ra8 b7 c6 g7 h7",
     "Kg1 Qe2 Rd1 b2 c3 g2 h2 v Kg8 Qe7 Ra8 b7 d6 g7 h7"},
    {{"OpenOverHalfOpenByAnotherFile"},
     "Kg1 Re1 Nc3 a2 c2 f2 g2 v Kg8 Rf8 Nf6 a7 b7 d6 g7",
     "Kg1 Rd1 Nc3 a2 c2 f2 g2 v Kg8 Rf8 Nf6 a7 b7 d6 g7"},
    {{"HalfOpenOverClosed"},
     "Kg1 Rc1 a2 e4 f2 g2 v Kg8 Rd8 a7 c6 f7 g7",
     "Kg1 Rc1 a2 c4 f2 g2 v Kg8 Rd8 a7 c6 f7 g7"},
    {{"HalfOpenOverClosedWithQueens"},
     "Kg1 Qe2 Rd1 b2 c3 g2 h2 v Kg8 Qe7 Ra8 b7 d6 g7 h7",
     "Kg1 Qe2 Rd1 b2 d3 g2 h2 v Kg8 Qe7 Ra8 b7 d6 g7 h7"},
    {{"HalfOpenOverClosedByAnotherFile"},
     "Kg1 Rd1 Nc3 a2 c2 f2 g2 v Kg8 Rf8 Nf6 a7 b7 d6 g7",
     "Kg1 Ra1 Nc3 a2 c2 f2 g2 v Kg8 Rf8 Nf6 a7 b7 d6 g7"},
};

class RookFiles : public Pairs {};

TEST_P(RookFiles, MakeRooksWorthMoreTheMoreOpenTheyAre) {
  ExpectBetterBy({TermId::kRookOnFile});
}

INSTANTIATE_TEST_SUITE_P(Positions, RookFiles, ::testing::ValuesIn(kRookFiles),
                         NameOfRow());

// Black's bishop cannot or can fight for the square.
constexpr Pair kContestedOutpost[] = {
    {{"OnD5"},
     "Kg1 Rd1 Nd5 c4 e4 g2 v Kg8 Rd8 Be7 b7 e5 g7",
     "Kg1 Rd1 Nd5 c4 e4 g2 v Kg8 Rd8 Be8 b7 e5 g7"},
    {{"OnE5WithQueens"},
     "Kg1 Qd1 Ne5 d4 f4 a2 v Kg8 Qc7 Bc8 d5 b7 h7",
     "Kg1 Qd1 Ne5 d4 f4 a2 v Kg8 Qc7 Bf8 d5 b7 h7"},
    {{"OnC6InAnEnding"},
     "Kf2 Nc6 b5 f3 v Kf7 Bf8 a7 f6",
     "Kf2 Nc6 b5 f3 v Kf7 Be8 a7 f6"},
};

class ContestedOutpost : public Pairs {};

TEST_P(ContestedOutpost, IsWorthLess) { ExpectBetterBy({TermId::kOutpost}); }

INSTANTIATE_TEST_SUITE_P(Positions, ContestedOutpost,
                         ::testing::ValuesIn(kContestedOutpost), NameOfRow());

// White's king keeps to its first rank, or is behind its pawns, or has walked
// ahead with queens on.
constexpr Pair kKingsAhead[] = {
    {{"OnE2"},
     "r2qk2r/ppp2ppp/8/8/8/8/PPP2PPP/R2QK2R w KQkq - 0 1",
     "r2qk2r/ppp2ppp/8/8/8/8/PPP1KPPP/R2Q3R w kq - 0 1"},
    {{"OnF2"},
     "r2qk2r/ppp3pp/8/8/8/8/PPP3PP/R2QK2R w KQkq - 0 1",
     "r2qk2r/ppp3pp/8/8/8/8/PPP2KPP/R2Q3R w kq - 0 1"},
    {{"OnC2MirroredOnF2"},
     "Kb1 Qd1 a2 b2 h2 v Kg8 Qd8 a7 g7 h7",
     "Kc2 Qd1 a2 b2 h2 v Kg8 Qd8 a7 g7 h7"},
    {{"FurtherAhead"},
     "Ke2 Qd1 a2 h2 v Kg8 Qd8 a7 h7",
     "Ke4 Qd1 a2 h2 v Kg8 Qd8 a7 h7"},
    {{"OnG2IsNoWalk"},
     "Kg2 Qd1 f2 g3 h2 v Kg8 Qd8 f7 g7 h7",
     "Kg4 Qd1 f2 g3 h2 v Kg8 Qd8 f7 g7 h7"},
};

class KingsAhead : public Pairs {};

TEST_P(KingsAhead, AreNoSaferThanAtHome) {
  ExpectBetterBy({TermId::kUncastled, TermId::kKingAhead});
}

INSTANTIATE_TEST_SUITE_P(Positions, KingsAhead,
                         ::testing::ValuesIn(kKingsAhead), NameOfRow());

TEST(KingAhead, CountsOnlyBeforeAQueenAndAheadOfItsRank) {
  for (const char* quiet :
       {"Ke2 Rd1 a2 v Kg8 Rd8 a7", "Kg2 Qd1 a2 v Kg8 Qd8 a7",
        "Ke1 Qd1 a2 v Kg8 Qd8 a7", "Kb2 Qd1 a2 v Kg8 Qd8 a7"}) {
    EXPECT_EQ(testing_support::SumFor(testing_support::FromPieces(quiet),
                                      Side::kWhite, {TermId::kKingAhead}),
              0)
        << quiet;
  }
}

// White's king and minor pieces are at home; the centre is locked or open.
constexpr Pair kAtHome[] = {
    {{"LockedOnD4AndE5"},
     "rnbqkbnr/pp3ppp/4p3/2ppP3/3P4/2P5/PP3PPP/RNBQKBNR w KQkq - 0 5",
     "rnbqkbnr/pp3ppp/8/8/8/8/PPP2PPP/RNBQKBNR w KQkq - 0 5"},
    {{"LockedOnE4AndD5"},
     "r1bq1rk1/ppp2pbp/3p1np1/3Pp3/2P1P3/8/PP3PPP/RNBQKBNR w KQ - 0 7",
     "r1bq1rk1/ppp2pbp/5np1/8/2P5/8/PP3PPP/RNBQKBNR w KQ - 0 7"},
    {{"LockedWithoutCastlingRights"},
     "Ke1 Qd1 Bc1 Nb1 c4 d5 e4 f2 v Kg8 Qd8 Bg7 Nf6 c5 d6 e5 f7",
     "Ke1 Qd1 Bc1 Nb1 c4 f3 f2 b2 v Kg8 Qd8 Bg7 Nd7 c5 f6 f7 b7"},
};

class AtHome : public Pairs {};

TEST_P(AtHome, KingCostsMoreInAnOpenCentre) {
  ExpectBetterBy({TermId::kUncastled});
}

TEST_P(AtHome, PiecesCostMoreInAnOpenCentre) {
  ExpectBetterBy({TermId::kUndeveloped});
}

INSTANTIATE_TEST_SUITE_P(Positions, AtHome, ::testing::ValuesIn(kAtHome),
                         NameOfRow());

}  // namespace
}  // namespace assay
