// Material against published values.
//
// L. Kaufman, "The Evaluation of Material Imbalances", Chess Life, March 1999:
// pawn 1, knight and bishop 3 1/4, rook 5, queen 9 3/4, bishop pair 1/2; a
// knight 1/16 more and a rook 1/8 less for each own pawn above five. Entries
// are whole centipawns, so sums may be one off for each correction.
#include <cstdlib>

#include "gtest/gtest.h"
#include "tests/support/from_pieces.h"
#include "tests/support/ledgers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

// The entries of the material theme, White's view.
Centipawns MaterialOf(const char* position) {
  Centipawns sum = 0;
  for (const Entry& entry :
       testing_support::LedgerOf(testing_support::FromPieces(position))
           .entries) {
    if (Info(entry.term).theme == Theme::kMaterial) sum += entry.value_cp;
  }
  return sum;
}

struct WorkedSum : testing_support::Row {
  const char* with;     // what is valued, and the rest
  const char* without;  // the rest alone
  double pawns;         // as published
};

constexpr WorkedSum kWorkedSums[] = {
    // 3.25 + (3.25 + 3/16) + 0.5.
    {{"BishopOfThePairAndKnightWithEightPawns"},
     "Kg1 Bc1 Bf1 Nb1 a2 b2 c2 d2 e2 f2 g2 h2 v Kg8 a7 b7 c7 d7 e7 f7 g7 h7",
     "Kg1 Bc1 a2 b2 c2 d2 e2 f2 g2 h2 v Kg8 a7 b7 c7 d7 e7 f7 g7 h7",
     7.1875},
    // 5 - 3/8.
    {{"RookWithEightPawns"},
     "Kg1 Rd1 a2 b2 c2 d2 e2 f2 g2 h2 v Kg8 a7 b7 c7 d7 e7 f7 g7 h7",
     "Kg1 a2 b2 c2 d2 e2 f2 g2 h2 v Kg8 a7 b7 c7 d7 e7 f7 g7 h7",
     4.625},
    // 3.25 + (3.25 - 3/16).
    {{"BishopAndKnightWithTwoPawns"},
     "Kg1 Bc1 Nb1 g2 h2 v Kg8 g7 h7",
     "Kg1 g2 h2 v Kg8 g7 h7",
     6.3125},
    // 5 + 3/8.
    {{"RookWithTwoPawns"},
     "Kg1 Rd1 g2 h2 v Kg8 g7 h7",
     "Kg1 g2 h2 v Kg8 g7 h7",
     5.375},
    // With five pawns each nothing is corrected.
    {{"ExchangeWithFivePawns"},
     "Kg1 Rd1 a2 b2 f2 g2 h2 v Kg8 Nb8 a7 b7 f7 g7 h7",
     "Kg1 a2 b2 f2 g2 h2 v Kg8 a7 b7 f7 g7 h7",
     1.75},
    {{"QueenWithFivePawns"},
     "Kg1 Qd1 a2 b2 f2 g2 h2 v Kg8 a7 b7 f7 g7 h7",
     "Kg1 a2 b2 f2 g2 h2 v Kg8 a7 b7 f7 g7 h7",
     9.75},
    {{"PairWithAllPawns"},
     "Kg1 Bc1 Bf1 a2 b2 c2 d2 e2 f2 g2 h2 v Kg8 Bc8 Nb8 a7 b7 c7 d7 e7 f7 g7 "
     "h7",
     "Kg1 Bc1 Nb1 a2 b2 c2 d2 e2 f2 g2 h2 v Kg8 Bc8 Nb8 a7 b7 c7 d7 e7 f7 g7 "
     "h7",
     0.5 - 3.0 / 16},
};

class WorkedSums : public ::testing::TestWithParam<WorkedSum> {};

TEST_P(WorkedSums, AreMet) {
  const WorkedSum& row = GetParam();
  EXPECT_NEAR(MaterialOf(row.with) - MaterialOf(row.without), 100 * row.pawns,
              1.0);
}

INSTANTIATE_TEST_SUITE_P(Kaufman, WorkedSums, ::testing::ValuesIn(kWorkedSums),
                         testing_support::NameOfRow());

// The envelope of the values of Philidor 1817, Pratt, Bilguer 1843, Lasker 1934
// and 1947, Euwe and Kramer 1944, Horowitz 1951, Evans 1958, Fischer 1972 and
// the Soviet chess encyclopedia 1990, pawn 1.
TEST(DefaultWeights, LieInThePublishedEnvelope) {
  const Weights weights;
  const auto check = [&](int Tapered::*phase) {
    const double pawn = weights.pawn.*phase;
    const double knight = weights.knight.*phase / pawn;
    const double bishop = weights.bishop.*phase / pawn;
    const double rook = weights.rook.*phase / pawn;
    const double queen = weights.queen.*phase / pawn;
    EXPECT_GE(knight, 3.0);
    EXPECT_LE(knight, 3.5);
    EXPECT_GE(bishop, 3.0);
    EXPECT_LE(bishop, 3.75);
    EXPECT_GE(rook, 4.5);
    EXPECT_LE(rook, 5.7);
    EXPECT_GE(queen, 7.9);
    EXPECT_LE(queen, 10.3);
    EXPECT_GE(bishop, knight);
    EXPECT_LT(rook + knight, queen + 1.0);
    EXPECT_LE(std::abs(2 * rook - queen), 1.0);
    EXPECT_GT(weights.bishop_pair.*phase, 0);
  };
  check(&Tapered::midgame);
  check(&Tapered::endgame);
}

}  // namespace
}  // namespace assay
