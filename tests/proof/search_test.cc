// The bounded search: mates, draws, budgets, and that its shortcuts change
// nothing that matters. Positions are our own unless a source is named.
#include "assay/proof/search.h"

#include <gtest/gtest.h>

#include <thread>

#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "assay/terms/ledger.h"
#include "tests/support/printers.h"
#include "tests/support/random_play.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::FromFen;

SearchResult Searched(const Position& position, std::uint64_t nodes,
                      int depth = kMostDepth, bool shortcuts = true) {
  SearchLimits limits;
  limits.nodes = nodes;
  limits.depth = depth;
  limits.shortcuts = shortcuts;
  return Search(position, Weights(), limits);
}

// The line is legal and ends in mate where one was announced.
void ExpectSoundLine(const Position& position, const SearchResult& result) {
  Position at = position;
  for (const Move move : result.line) {
    ASSERT_TRUE(IsLegal(at, move)) << ToFen(at);
    at = at.After(move);
  }
}

struct MateRow : testing_support::Row {
  const char* fen;
  int mate_in;
};

constexpr MateRow kMates[] = {
    {{"BackRank"}, "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1", 1},
    {{"BackRankForBlack"}, "r5k1/8/8/8/8/8/5PPP/6K1 b - - 0 1", -1},
    {{"QueenBesideTheKing"}, "7k/8/6K1/8/8/8/8/5Q2 w - - 0 1", 1},
    {{"Smothered"}, "6rk/6pp/7N/8/8/8/8/6K1 w - - 0 1", 1},
    {{"KnightGivesIt"}, "6rk/6pp/8/6N1/8/8/8/6K1 w - - 0 1", 1},
    {{"TwoRooks"}, "7k/8/8/8/8/8/R7/1R4K1 w - - 0 1", 2},
    {{"RookAndKing"}, "7k/8/5K2/8/8/8/8/R7 w - - 0 1", 2},
    {{"QueenAndKing"}, "8/8/8/8/8/2k5/8/K2q4 w - - 0 1", -2},
    {{"ToBeMated"}, "k7/8/1K6/8/8/8/8/7R b - - 0 1", 1},
    // The theme of Loveday's problem of 1845, from memory: Black is mated for
    // having to move, his knight being pinned.
    {{"MovingIsTheBurden"}, "8/8/1p5B/4p3/1p2k1P1/1P3n2/P4PB1/K2R4 w - -", 3},
};

class Mates : public ::testing::TestWithParam<MateRow> {};

TEST_P(Mates, AreMovesNotCentipawns) {
  const Position position = FromFen(GetParam().fen);
  const SearchResult result = Searched(position, 50000);
  EXPECT_EQ(result.mate_in, GetParam().mate_in);
  if (result.mate_in != 0) {
    EXPECT_EQ(result.score_cp, 0);
    ExpectSoundLine(position, result);
    Position end = position;
    for (const Move move : result.line) end = end.After(move);
    EXPECT_TRUE(IsCheckmate(end)) << ToFen(end);
  }
}

INSTANTIATE_TEST_SUITE_P(Positions, Mates, ::testing::ValuesIn(kMates),
                         testing_support::NameOfRow());

TEST(Search, AnswersFinishedGamesAtOnce) {
  const SearchResult stalemate =
      Searched(FromFen("7k/5Q2/6K1/8/8/8/8/8 b - -"), 100);
  EXPECT_TRUE(stalemate.line.empty());
  EXPECT_EQ(stalemate.score_cp, 0);
  EXPECT_TRUE(stalemate.complete);
  const SearchResult mated =
      Searched(FromFen("7k/6Q1/6K1/8/8/8/8/8 b - -"), 100);
  EXPECT_TRUE(mated.line.empty());
  EXPECT_GT(mated.score_cp, 0);
  // FIDE Laws 5.2.2, number from memory.
  const SearchResult dead =
      Searched(FromFen("8/8/4k3/8/8/3BK3/8/8 w - -"), 100);
  EXPECT_EQ(dead.score_cp, 0);
}

// From memory: the position with the most legal moves, 218 (N. Petrovic,
// 1964).
TEST(Search, TakesManyMoves) {
  const Position position =
      FromFen("R6R/3Q4/1Q4Q1/4Q3/2Q4Q/Q4Q2/pp1Q4/kBNN1KB1 w - - 0 1");
  EXPECT_EQ(CountLegalMoves(position), 218);
  EXPECT_EQ(Searched(position, 20000).mate_in, 1);
}

TEST(Search, WinsAPieceThatHangs) {
  const Position position =
      FromFen("4k3/ppp2ppp/8/3n4/8/8/PPP2PPP/3RK3 w - - 0 1");
  const SearchResult result = Searched(position, 5000);
  EXPECT_EQ(ToCoordinates(result.line.front()), "d1d5");
  EXPECT_GT(result.score_cp, ScoreOf(position, Weights()) + 150);
}

TEST(Search, GivesTheSameTwiceAndInTwoThreads) {
  const Position position = FromFen(
      "r1bq1rk1/pp3ppp/2n1pn2/2bp4/8/2NBPN2/PPP2PPP/R1BQ1RK1 w - - 0 8");
  const SearchResult here = Searched(position, 8000);
  SearchResult there;
  std::thread other([&] { there = Searched(position, 8000); });
  other.join();
  EXPECT_EQ(here.score_cp, there.score_cp);
  EXPECT_EQ(here.line, there.line);
  EXPECT_EQ(here.nodes, there.nodes);
}

TEST(Search, SeesTheSameFromTheOtherSide) {
  int compared = 0;
  testing_support::PlayAtRandom(31, 400, [&](const Position& position, Move) {
    if (++compared % 20 != 0) return;
    const SearchResult white = Searched(position, 1000000, 2);
    const SearchResult black = Searched(SwapColours(position), 1000000, 2);
    EXPECT_EQ(white.score_cp, -black.score_cp) << ToFen(position);
    EXPECT_EQ(white.mate_in, -black.mate_in) << ToFen(position);
  });
  EXPECT_GE(compared, 400);
}

}  // namespace
}  // namespace assay
