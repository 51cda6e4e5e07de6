// What a caller may ask for: budgets and depths from nothing to far too much,
// cancellation, positions with one move or none.
#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <limits>
#include <thread>

#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "assay/proof/search.h"
#include "assay/rules/movegen.h"
#include "assay/terms/ledger.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

using testing_support::FromFen;

SearchResult Searched(const Position& position, std::uint64_t nodes,
                      int depth = kMostDepth) {
  SearchLimits limits;
  limits.nodes = nodes;
  limits.depth = depth;
  return Search(position, Weights(), limits);
}

TEST(Limits, BudgetsAreKeptAndAMoveIsNamed) {
  const Position position = Position::Initial();
  for (const std::uint64_t nodes : {0, 1, 2, 100, 5000}) {
    const SearchResult result = Searched(position, nodes);
    EXPECT_LE(result.nodes, std::max<std::uint64_t>(nodes, 1));
    ASSERT_FALSE(result.line.empty());
    EXPECT_TRUE(IsLegal(position, result.line.front()));
    EXPECT_FALSE(result.complete);
    EXPECT_EQ(result.mate_in, 0);
  }
}

// A budget that finishes no depth leaves the static score.
TEST(Limits, OneNodeGivesTheStaticScore) {
  const SearchResult result = Searched(Position::Initial(), 1);
  EXPECT_EQ(result.depth, 0);
  EXPECT_EQ(result.line.size(), 1U);
  EXPECT_EQ(result.score_cp, ScoreOf(Position::Initial(), Weights()));
}

TEST(Limits, DepthsAreClamped) {
  const Position position = FromFen("8/8/8/4k3/8/8/4P3/4K3 w - - 0 1");
  for (const int depth : {std::numeric_limits<int>::min(), -1, 0, 1}) {
    const SearchResult result = Searched(position, 100000, depth);
    EXPECT_EQ(result.depth, 1);
    EXPECT_TRUE(result.complete);
  }
  const SearchResult deep =
      Searched(position, 20000, std::numeric_limits<int>::max());
  EXPECT_GT(deep.depth, 1);
  EXPECT_LE(deep.depth, kMostDepth);
}

TEST(Limits, EndsWhereThereIsNothingMoreToSearch) {
  // Every move but a mate leads to a draw on claim.
  const SearchResult result =
      Searched(FromFen("8/8/8/4k3/8/8/8/R3K3 w - - 100 120"), 1000000);
  EXPECT_TRUE(result.complete);
  EXPECT_EQ(result.depth, kMostDepth);
}

TEST(Limits, StopsWhenCancelledBefore) {
  const std::atomic<bool> cancelled{true};
  SearchLimits limits;
  limits.nodes = 4000000000U;
  limits.cancelled = &cancelled;
  const SearchResult result = Search(Position::Initial(), Weights(), limits);
  EXPECT_FALSE(result.complete);
  EXPECT_LE(result.nodes, 512U);  // looked at every 256
  EXPECT_FALSE(result.line.empty());
}

// The budget alone would take an hour.
TEST(Limits, StopsWhenCancelledFromAnotherThread) {
  std::atomic<bool> cancelled{false};
  SearchLimits limits;
  limits.nodes = 4000000000U;
  limits.cancelled = &cancelled;
  std::thread other([&] {
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
    cancelled.store(true);
  });
  const SearchResult result = Search(Position::Initial(), Weights(), limits);
  other.join();
  EXPECT_FALSE(result.complete);
  EXPECT_LT(result.nodes, limits.nodes);
  EXPECT_FALSE(result.line.empty());
}

TEST(Limits, TheOnlyMoveIsNamed) {
  const Position position = FromFen("k7/8/8/8/8/8/1r6/7K w - - 0 1");
  ASSERT_EQ(CountLegalMoves(position), 1);
  for (const std::uint64_t nodes : {0, 10, 10000}) {
    const SearchResult result = Searched(position, nodes);
    ASSERT_FALSE(result.line.empty());
    EXPECT_EQ(ToSan(position, result.line.front()), "Kg1");
  }
}

}  // namespace
}  // namespace assay
