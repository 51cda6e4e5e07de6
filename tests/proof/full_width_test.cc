// The search without its shortcuts against a plain one written from the
// definition in search.h, and how much the shortcuts change.
#include <gtest/gtest.h>

#include <cstdlib>
#include <iostream>
#include <set>
#include <vector>

#include "assay/notation/fen.h"
#include "assay/proof/search.h"
#include "assay/rules/draw.h"
#include "tests/support/plain_search.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

constexpr int kDepth = 4;
constexpr int kShards = 10;  // so that CTest runs them beside each other
constexpr int kPositionsAShard = 50;
constexpr int kRichAShard = 15;
// A plain search takes minutes in a position with many moves: most positions
// have few.
constexpr int kFirstMove = 5;  // earlier, games of all shards are alike
constexpr std::size_t kFewMoves = 24;
constexpr std::size_t kManyMoves = 44;

// Distinct positions of plausible games, `kRichAShard` of them with up to
// kManyMoves moves, the others with few.
std::vector<Position> PositionsOf(int shard) {
  std::vector<Position> positions;
  std::set<std::uint64_t> known;
  int rich = 0;
  int seen = 0;
  testing_support::PlayPlausibly(
      static_cast<std::uint64_t>(1000 + shard), 6000,
      [&](const Position& position) {
        if (++seen % 5 != 0 || positions.size() == kPositionsAShard) return;
        MoveList moves;
        LegalMoves(position, moves);
        const bool few = moves.size() <= kFewMoves;
        if (moves.empty() || moves.size() > kManyMoves ||
            position.fullmove_number() < kFirstMove ||
            IsInsufficientMaterial(position) ||
            IsSeventyFiveMoveDraw(position) || (!few && rich == kRichAShard) ||
            !known.insert(position.hash()).second) {
          return;
        }
        rich += few ? 0 : 1;
        positions.push_back(position);
      });
  return positions;
}

SearchResult Searched(const Position& position, bool shortcuts) {
  SearchLimits limits;
  limits.nodes = 4000000000U;
  limits.depth = kDepth;
  limits.shortcuts = shortcuts;
  return Search(position, Weights(), limits);
}

// Centipawns or a mate as one number, White's view.
int ValueOf(const SearchResult& result) {
  return result.mate_in == 0 ? result.score_cp
                             : (result.mate_in > 0 ? 1 : -1) *
                                   (testing_support::PlainSearch::kMate -
                                    static_cast<int>(result.line.size()));
}

class FullWidth : public ::testing::TestWithParam<int> {};

TEST_P(FullWidth, EqualsAPlainSearch) {
  testing_support::PlainSearch plain;
  const std::vector<Position> positions = PositionsOf(GetParam());
  ASSERT_EQ(positions.size(), static_cast<std::size_t>(kPositionsAShard));
  for (const Position& position : positions) {
    EXPECT_EQ(ValueOf(Searched(position, false)),
              Sign(position.side_to_move()) * plain.Value(position, kDepth))
        << ToFen(position);
  }
}

INSTANTIATE_TEST_SUITE_P(Shards, FullWidth, ::testing::Range(0, kShards));

TEST(Shortcuts, ChangeLittle) {
  int compared = 0;
  int another_score = 0;
  int far = 0;  // as far as a verdict would be flagged: more than 60 cp
  int another_move = 0;
  std::set<std::uint64_t> distinct;
  for (int shard = 0; shard < kShards; ++shard) {
    for (const Position& position : PositionsOf(shard)) {
      const SearchResult with = Searched(position, true);
      const SearchResult without = Searched(position, false);
      const int apart = std::abs(ValueOf(with) - ValueOf(without));
      ++compared;
      distinct.insert(position.hash());
      another_score += apart != 0 ? 1 : 0;
      far += apart > 60 ? 1 : 0;
      another_move += with.line.front() != without.line.front() ? 1 : 0;
    }
  }
  ASSERT_EQ(compared, kShards * kPositionsAShard);
  EXPECT_EQ(distinct.size(), static_cast<std::size_t>(compared));
  RecordProperty("another_score", another_score);
  RecordProperty("more_than_60_cp_apart", far);
  RecordProperty("another_move", another_move);
  std::cout << "of " << compared << " positions: another score "
            << another_score << ", more than 60 cp apart " << far
            << ", another move " << another_move << '\n';
  EXPECT_LE(another_score, compared * 40 / 100);
  EXPECT_LE(far, compared * 8 / 100);
  EXPECT_LE(another_move, compared * 25 / 100);
}

}  // namespace
}  // namespace assay
