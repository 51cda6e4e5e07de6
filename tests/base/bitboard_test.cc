// Set operations against loops over files and ranks, on random sets.
#include "assay/base/bitboard.h"

#include <bitset>
#include <functional>
#include <random>
#include <vector>

#include "gtest/gtest.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

constexpr int kSets = 2000;

// Sparse and dense sets, the empty and the full one among them.
std::vector<Bitboard> Sets() {
  std::mt19937_64 random(7);
  std::vector<Bitboard> sets = {kEmptySet, kAllSquares, Bit(kA1), Bit(kH8)};
  for (int i = 0; i < kSets; ++i) {
    Bitboard set = random();
    for (int thin = 0; thin < i % 5; ++thin) set &= random();
    sets.push_back(set);
  }
  return sets;
}

// The squares for which some square of the set stands in the relation to it.
Bitboard Related(Bitboard set,
                 const std::function<bool(Square from, Square to)>& relation) {
  Bitboard related = 0;
  for (int to = 0; to < kSquares; ++to) {
    for (int from = 0; from < kSquares; ++from) {
      if (((set >> from) & 1U) != 0 && relation(Square(from), Square(to))) {
        related |= Bitboard{1} << to;
      }
    }
  }
  return related;
}

// How many ranks `to` lies ahead of `from`, as the side looks.
int Ahead(Side side, Square from, Square to) {
  return Sign(side) * (RankOf(to) - RankOf(from));
}

bool SameFile(Square a, Square b) { return FileOf(a) == FileOf(b); }

TEST(Bitboard, CountsAndWalksSquares) {
  for (const Bitboard set : Sets()) {
    ASSERT_EQ(PopCount(set), static_cast<int>(std::bitset<64>(set).count()));
    std::vector<Square> expected;
    for (int s = 0; s < kSquares; ++s) {
      if (std::bitset<64>(set).test(s)) expected.push_back(Square(s));
    }
    std::vector<Square> walked;
    for (const Square square : Each(set)) walked.push_back(square);
    ASSERT_EQ(walked, expected);
    ASSERT_EQ(HasMany(set), expected.size() > 1);
    if (expected.empty()) continue;
    ASSERT_EQ(First(set), expected.front());
    ASSERT_EQ(Last(set), expected.back());
    Bitboard rest = set;
    ASSERT_EQ(PopFirst(rest), expected.front());
    ASSERT_EQ(rest, set & ~Bit(expected.front()));
  }
}

TEST(Bitboard, LooksAheadAndBehindForEitherSide) {
  for (const Bitboard set : Sets()) {
    for (const Side side : kSides) {
      ASSERT_EQ(Forward(side, set), Related(set, [side](Square a, Square b) {
                  return SameFile(a, b) && Ahead(side, a, b) == 1;
                }));
      ASSERT_EQ(FillForward(side, set),
                Related(set, [side](Square a, Square b) {
                  return SameFile(a, b) && Ahead(side, a, b) >= 0;
                }));
      ASSERT_EQ(FrontSpan(side, set), Related(set, [side](Square a, Square b) {
                  return SameFile(a, b) && Ahead(side, a, b) > 0;
                }));
      ASSERT_EQ(RearSpan(side, set), Related(set, [side](Square a, Square b) {
                  return SameFile(a, b) && Ahead(side, a, b) < 0;
                }));
      ASSERT_EQ(PawnAttacks(side, set),
                Related(set, [side](Square a, Square b) {
                  const int files = FileOf(a) - FileOf(b);
                  return files * files == 1 && Ahead(side, a, b) == 1;
                }));
    }
  }
}

TEST(Bitboard, LooksSideways) {
  for (const Bitboard set : Sets()) {
    ASSERT_EQ(FillFiles(set), Related(set, SameFile));
    ASSERT_EQ(Neighbours(set), Related(set, [](Square a, Square b) {
                const int files = FileOf(a) - FileOf(b);
                return RankOf(a) == RankOf(b) && files * files == 1;
              }));
    ASSERT_EQ(FlipRanks(set), Related(set, [](Square a, Square b) {
                return SameFile(a, b) && RankOf(a) + RankOf(b) == 7;
              }));
  }
}

TEST(Bitboard, NamesFilesRanksAndColours) {
  for (int s = 0; s < kSquares; ++s) {
    const auto square = static_cast<Square>(s);
    for (int i = 0; i < 8; ++i) {
      ASSERT_EQ(Contains(FileMask(i), square), FileOf(square) == i);
      ASSERT_EQ(Contains(RankMask(i), square), RankOf(square) == i);
      for (const Side side : kSides) {
        ASSERT_EQ(Contains(RelativeRankMask(side, i), square),
                  RelativeRank(side, square) == i);
      }
    }
    ASSERT_EQ(Contains(kLightSquares, square), IsLight(square));
    ASSERT_EQ(Contains(kDarkSquares, square), !IsLight(square));
  }
}

}  // namespace
}  // namespace assay
