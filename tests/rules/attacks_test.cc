// The look-up tables, built by either method, against a walk along the rays
// that is written here a second time, with files and ranks as plain numbers.
#include "assay/rules/attacks.h"

#include <cstdlib>
#include <random>
#include <utility>
#include <vector>

#include "assay/base/cpu.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using Directions = std::vector<std::pair<int, int>>;

const Directions& Straight() {
  static const Directions directions = {{0, 1}, {1, 0}, {0, -1}, {-1, 0}};
  return directions;
}
const Directions& Diagonal() {
  static const Directions directions = {{1, 1}, {1, -1}, {-1, -1}, {-1, 1}};
  return directions;
}

// The squares of one ray in order, without the start.
std::vector<int> Ray(int from, std::pair<int, int> direction) {
  std::vector<int> squares;
  int file = from % 8 + direction.first;
  int rank = from / 8 + direction.second;
  while (file >= 0 && file < 8 && rank >= 0 && rank < 8) {
    squares.push_back(8 * rank + file);
    file += direction.first;
    rank += direction.second;
  }
  return squares;
}

Bitboard SlowAttacks(int from, const Directions& directions,
                     Bitboard occupied) {
  Bitboard attacked = 0;
  for (const auto& direction : directions) {
    for (const int square : Ray(from, direction)) {
      attacked |= Bitboard{1} << square;
      if (((occupied >> square) & 1U) != 0) break;
    }
  }
  return attacked;
}

// The squares of the rays whose occupation can matter: all but each last one.
Bitboard Relevant(int from, const Directions& directions) {
  Bitboard mask = 0;
  for (const auto& direction : directions) {
    std::vector<int> ray = Ray(from, direction);
    if (!ray.empty()) ray.pop_back();
    for (const int square : ray) mask |= Bitboard{1} << square;
  }
  return mask;
}

struct Method : testing_support::Row {
  bool use_pext;
};

class AttackTables : public ::testing::TestWithParam<Method> {
 protected:
  void SetUp() override {
    EnsureAttackTables();
    if (GetParam().use_pext && !kCpuHasFastPext) {
      GTEST_SKIP() << "this processor has no fast PEXT";
    }
    attacks_internal::Build(GetParam().use_pext);
  }
  void TearDown() override { attacks_internal::Build(kCpuHasFastPext); }
};

TEST_P(AttackTables, AgreeWithTheWalkOnEverySubsetOfTheRays) {
  for (int from = 0; from < kSquares; ++from) {
    const auto square = static_cast<Square>(from);
    const Bitboard straight = Relevant(from, Straight());
    Bitboard occupied = 0;
    do {
      ASSERT_EQ(RookAttacks(square, occupied),
                SlowAttacks(from, Straight(), occupied))
          << "rook on " << ToString(square) << ", occupied " << occupied;
      occupied = (occupied - straight) & straight;
    } while (occupied != 0);
    const Bitboard diagonal = Relevant(from, Diagonal());
    do {
      ASSERT_EQ(BishopAttacks(square, occupied),
                SlowAttacks(from, Diagonal(), occupied))
          << "bishop on " << ToString(square) << ", occupied " << occupied;
      occupied = (occupied - diagonal) & diagonal;
    } while (occupied != 0);
  }
}

// Any of the 64 squares may be occupied, the piece's own among them; the
// densities run from crowded to nearly empty.
TEST_P(AttackTables, AgreeWithTheWalkOnRandomBoards) {
  std::mt19937_64 random(64);
  for (int round = 0; round < 1000; ++round) {
    Bitboard occupied = random();
    for (int thin = 0; thin < round % 4; ++thin) occupied &= random();
    for (int from = 0; from < kSquares; ++from) {
      const auto square = static_cast<Square>(from);
      const Bitboard rook = SlowAttacks(from, Straight(), occupied);
      const Bitboard bishop = SlowAttacks(from, Diagonal(), occupied);
      ASSERT_EQ(RookAttacks(square, occupied), rook) << ToString(square);
      ASSERT_EQ(BishopAttacks(square, occupied), bishop) << ToString(square);
      ASSERT_EQ(QueenAttacks(square, occupied), rook | bishop);
      ASSERT_EQ(PieceAttacks(PieceKind::kQueen, square, occupied),
                rook | bishop);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Methods, AttackTables,
                         ::testing::Values(Method{{"Magic"}, false},
                                           Method{{"Pext"}, true}),
                         testing_support::NameOfRow());

// Knights, kings and pawns from what their steps are, for every pair of
// squares.
TEST(StepAttacks, AreTheStepsOfThePiece) {
  EnsureAttackTables();
  for (int a = 0; a < kSquares; ++a) {
    for (int b = 0; b < kSquares; ++b) {
      const auto from = static_cast<Square>(a);
      const auto to = static_cast<Square>(b);
      const int files = std::abs(a % 8 - b % 8);
      const int up = b / 8 - a / 8;
      const int ranks = std::abs(up);
      ASSERT_EQ(Contains(KnightAttacks(from), to), files * ranks == 2);
      ASSERT_EQ(Contains(KingAttacks(from), to),
                a != b && files <= 1 && ranks <= 1);
      ASSERT_EQ(Contains(PawnAttacks(Side::kWhite, from), to),
                files == 1 && up == 1);
      ASSERT_EQ(Contains(PawnAttacks(Side::kBlack, from), to),
                files == 1 && up == -1);
    }
  }
}

TEST(Lines, BetweenAndLineAgreeWithTheRays) {
  EnsureAttackTables();
  Directions all = Straight();
  all.insert(all.end(), Diagonal().begin(), Diagonal().end());
  for (int a = 0; a < kSquares; ++a) {
    Bitboard between[kSquares] = {};
    Bitboard line[kSquares] = {};
    for (const auto& [file, rank] : all) {
      Bitboard whole = Bitboard{1} << a;
      for (const int square : Ray(a, {file, rank})) {
        whole |= Bitboard{1} << square;
      }
      for (const int square : Ray(a, {-file, -rank})) {
        whole |= Bitboard{1} << square;
      }
      Bitboard passed = 0;
      for (const int b : Ray(a, {file, rank})) {
        between[b] = passed;
        line[b] = whole;
        passed |= Bitboard{1} << b;
      }
    }
    for (int b = 0; b < kSquares; ++b) {
      const auto from = static_cast<Square>(a);
      const auto to = static_cast<Square>(b);
      ASSERT_EQ(Between(from, to), between[b])
          << ToString(from) << ToString(to);
      ASSERT_EQ(Line(from, to), line[b]) << ToString(from) << ToString(to);
    }
  }
}

}  // namespace
}  // namespace assay
