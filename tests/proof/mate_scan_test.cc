// The scan for mates against a plain solver, and the sieve for checking moves
// that it rests on against the moves themselves.
#include "assay/proof/mate_scan.h"

#include <gtest/gtest.h>

#include "assay/notation/fen.h"
#include "assay/proof/checking_squares.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "tests/support/plain_mates.h"
#include "tests/support/printers.h"
#include "tests/support/random_play.h"

namespace assay {
namespace {

using testing_support::FromFen;

std::vector<Move> Found(const Position& position, int moves,
                        std::uint64_t nodes = 1000000) {
  MoveList first;
  LegalMoves(position, first);
  MateScan scan(nodes, nullptr);
  return scan.Find(position, first, moves);
}

void ExpectMate(const Position& position, const std::vector<Move>& line) {
  Position end = position;
  for (const Move move : line) {
    ASSERT_TRUE(IsLegal(end, move)) << ToFen(end);
    end = end.After(move);
  }
  EXPECT_TRUE(IsCheckmate(end)) << ToFen(position);
}

TEST(MateScan, FindsWhatIsThereAndNothingElse) {
  int found[3] = {};
  testing_support::PlayAtRandom(11, 6000, [&](const Position& position, Move) {
    const int shortest = testing_support::ShortestMate(position, 2);
    ++found[shortest];
    const std::vector<Move> in_one = Found(position, 1);
    EXPECT_EQ(in_one.size(), shortest == 1 ? 1U : 0U) << ToFen(position);
    if (shortest == 1) return ExpectMate(position, in_one);
    const std::vector<Move> in_two = Found(position, 2);
    EXPECT_EQ(in_two.size(), shortest == 2 ? 3U : 0U) << ToFen(position);
    if (shortest == 2) ExpectMate(position, in_two);
  });
  EXPECT_GE(found[0], 1000);
  EXPECT_GE(found[1], 60);
  EXPECT_GE(found[2], 50);
}

// Black is mated for having to move, from memory after Loveday 1845.
constexpr char kZugzwang[] = "8/8/1p5B/4p3/1p2k1P1/1P3n2/P4PB1/K2R4 w - - 0 1";

TEST(MateScan, NeedsItsNodes) {
  const Position position = FromFen(kZugzwang);
  EXPECT_EQ(Found(position, 3).size(), 5U);
  MoveList first;
  LegalMoves(position, first);
  for (const std::uint64_t nodes : {0, 1, 10}) {
    MateScan scan(nodes, nullptr);
    EXPECT_TRUE(scan.Find(position, first, 3).empty());
    EXPECT_TRUE(scan.exhausted());
    EXPECT_LE(scan.nodes(), nodes);
  }
}

TEST(MateScan, TriesTheFirstMovesAlone) {
  const Position position = FromFen(kZugzwang);
  const std::vector<Move> line = Found(position, 3);
  ASSERT_FALSE(line.empty());
  MoveList all;
  LegalMoves(position, all);
  MoveList others;
  for (const Move move : all) {
    if (move != line.front()) others.Add(move);
  }
  MateScan scan(1000000, nullptr);
  EXPECT_TRUE(scan.Find(position, others, 3).empty());  // it has one key
  EXPECT_FALSE(scan.exhausted());
}

TEST(MateScan, GoesNoFurtherThanItSays) {
  EXPECT_TRUE(Found(FromFen(kZugzwang), MateScan::kMostMoves + 1).empty());
}

TEST(CheckingSquares, RefuseNoCheck) {
  int checks = 0;
  int let_through = 0;
  testing_support::PlayAtRandom(12, 5000, [&](const Position& position, Move) {
    const CheckingSquares squares(position);
    MoveList moves;
    LegalMoves(position, moves);
    for (const Move move : moves) {
      const bool check = position.After(move).InCheck();
      const bool may = squares.MayCheck(position, move);
      EXPECT_TRUE(may || !check) << ToFen(position);
      if (move.type() != Move::Type::kNormal) continue;
      checks += check ? 1 : 0;
      let_through += may ? 1 : 0;
    }
  });
  EXPECT_GE(checks, 2000);
  // A sieve that lets everything through is none.
  EXPECT_LE(let_through, 2 * checks);
}

}  // namespace
}  // namespace assay
