// The exchange, the pair and the minor piece against averages over many games.
//
// L. Kaufman, "The Evaluation of Material Imbalances", Chess Life, March 1999:
// what one imbalance was worth on average, in pawns. Averages are over all
// numbers of pawns; each row takes the number that is usual for its stage of
// the game, and a margin that a pawn more or less would make.
#include <string>

#include "gtest/gtest.h"
#include "tests/support/from_pieces.h"
#include "tests/support/ledgers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

// What the pieces and pawns alone come to, White's view.
Centipawns MaterialOf(const std::string& pieces) {
  const Position position = testing_support::FromPieces(pieces);
  Centipawns sum = 0;
  for (const Side side : kSides) {
    sum += Sign(side) *
           testing_support::SumFor(position, side,
                                   {TermId::kMaterial, TermId::kKnightPawns,
                                    TermId::kRookPawns, TermId::kBishopPair});
  }
  return sum;
}

struct Average : testing_support::Row {
  const char* position;  // the rest of the armies is the same
  double pawns;          // in White's favour, as published
  double margin;
};

constexpr double kEighth = 0.125;
constexpr double kQuarter = 0.25;

constexpr Average kAverages[] = {
    // 1 3/4 "on average, a tiny bit more when it's a knight".
    {{"ExchangeForAKnight"},
     "Kg1 Rd1 Rf1 a2 b2 f2 g2 h3 v Kg8 Rd8 Nf6 a7 b6 f7 g7 h7",
     1.75,
     kEighth},
    {{"ExchangeForASingleBishop"},
     "Kg1 Rd1 Re1 Nf3 a3 b2 f2 g2 h2 v Kg8 Re8 Nf6 Bg7 a7 b7 f7 g6 h7",
     1.75,
     kEighth},
    {{"ExchangeAgainstThePair"},
     "Kg1 Ra1 Rd1 Bf3 a2 b3 f2 g3 h2 v Kg8 Rd8 Be6 Bg7 a7 b7 f7 g6 h7",
     1.15,
     kEighth},
    // Queens and all rooks but one's own still on: 1 1/2, and 1.
    {{"ExchangeWithAllHeavyPieces"},
     "Kg1 Qd1 Ra1 Rd2 Nf3 Nc3 a2 b2 c2 e4 f2 g2 h2 v "
     "Kg8 Qd8 Ra8 Nc6 Nf6 Bd7 a7 b7 c7 d6 f7 g7 h7",
     1.5,
     kQuarter},
    {{"ExchangeWithAllHeavyPiecesAgainstThePair"},
     "Kg1 Qd1 Ra1 Rd2 Nf3 Bb3 a2 b2 c2 e4 f2 g2 h2 v "
     "Kg8 Qd8 Ra8 Nf6 Bd7 Bg7 a7 b7 c7 d6 f7 g6 h7",
     1.0,
     kQuarter},
    // Queens and one pair of rooks gone: "a little over 2", and about 1 1/2.
    {{"ExchangeInTheEnding"},
     "Kg1 Rd1 b2 f2 g2 v Kg8 Nf6 b7 f7 g7",
     2.05,
     kQuarter},
    {{"ExchangeInTheEndingAgainstThePair"},
     "Kg1 Rd1 Bf3 b2 f2 g2 v Kg8 Be6 Bg7 b7 f7 h7",
     1.5,
     kQuarter},
    // A minor piece: 3.14 on average over all positions.
    {{"KnightForThreePawns"},
     "Kg1 Rd1 Nf3 a2 b2 f2 g2 h2 v Kg8 Rd8 a7 b7 c7 e7 f7 g7 h7 d6",
     0.14 + 3 * kEighth,  // Black's rook has three pawns more, an eighth each
     kEighth},
    {{"BishopForThreePawns"},
     "Kg1 Be3 a2 b2 f2 g2 h2 v Kg8 a7 b7 c7 e7 f7 g7 h7 d6",
     0.14,
     kEighth},
    // Rook against minor piece, with eight and with two pawns: worked sums.
    {{"RookForKnightWithEightPawns"},
     "Kg1 Rd1 a2 b2 c3 d3 e3 f2 g2 h2 v Kg8 Nf6 a7 b7 c6 d6 e6 f7 g7 h7",
     4.625 - 3.4375,
     0.02},
    {{"RookForBishopWithEightPawns"},
     "Kg1 Rd1 a2 b2 c3 d3 e3 f2 g2 h2 v Kg8 Be7 a7 b7 c6 d6 e6 f7 g7 h7",
     4.625 - 3.25,
     0.02},
    {{"RookForKnightWithTwoPawns"},
     "Kg1 Rd1 f2 g3 v Kg8 Nf6 f7 g7",
     5.375 - 3.0625,
     0.02},
    {{"RookForBishopWithTwoPawns"},
     "Kg1 Rd1 f2 g3 v Kg8 Bf6 f7 g6",
     5.375 - 3.25,
     0.02},
    // "Two minors are about rook + 2 1/2 pawns", with two pawns "rook + 1".
    {{"BishopAndKnightOfAPairForARookWithEightPawns"},
     "Kg1 Bc1 Bg2 Nf3 a2 b2 c3 d3 e3 f2 g3 h2 v "
     "Kg8 Bg7 Rd8 a7 b7 c6 d6 e6 f7 g6 h7",
     2.5,
     kEighth},
    {{"BishopAndKnightForARookWithTwoPawns"},
     "Kg1 Be3 Nf3 f2 g2 v Kg8 Rd8 f7 g7",
     1.0,
     kEighth},
    // The pair: half a pawn.
    {{"PairInAnOpenPosition"},
     "Kg1 Rd1 Bd3 Be3 a2 b2 f2 g2 h2 v Kg8 Rd8 Be7 Nf6 a7 b7 f7 g7 h7",
     0.5,
     kEighth},
    {{"PairWithQueensAndSevenPawns"},
     "Kg1 Qe2 Rd1 Bd3 Be3 a2 b2 c3 d4 f2 g2 h2 v "
     "Kg8 Qe7 Rd8 Bd6 Nf6 a7 b7 c7 e6 f7 g7 h7",
     0.5 - 0.125,  // the knight gains a sixteenth for each pawn above five
     kEighth},
};

class Averages : public ::testing::TestWithParam<Average> {};

TEST_P(Averages, AreMetWithinTheMargin) {
  const Average& row = GetParam();
  EXPECT_NEAR(MaterialOf(row.position) / 100.0, row.pawns, row.margin);
}

INSTANTIATE_TEST_SUITE_P(Kaufman, Averages, ::testing::ValuesIn(kAverages),
                         testing_support::NameOfRow());

// An exchange up, with the same number of pawns on each side.
Centipawns ExchangeWith(const std::string& minor_piece, int pawns) {
  constexpr const char* kWhite[] = {"g2", "f2", "b2", "a2",
                                    "h2", "c3", "e3", "d3"};
  constexpr const char* kBlack[] = {"g7", "f7", "b7", "a7",
                                    "h7", "c6", "e6", "d6"};
  std::string white = "Kg1 Rd1";
  std::string black = " v Kg8 " + minor_piece;
  for (int i = 0; i < pawns; ++i) {
    white += std::string(" ") + kWhite[i];
    black += std::string(" ") + kBlack[i];
  }
  return MaterialOf(white + black);
}

TEST(EachPawnTrade, HelpsTheRookAndMostAgainstAKnight) {
  for (int pawns = 8; pawns > 1; --pawns) {
    const Centipawns by_knight =
        ExchangeWith("Nf6", pawns - 1) - ExchangeWith("Nf6", pawns);
    const Centipawns by_bishop =
        ExchangeWith("Be7", pawns - 1) - ExchangeWith("Be7", pawns);
    EXPECT_GT(by_bishop, 0) << pawns;
    EXPECT_GT(by_knight, by_bishop) << pawns;
  }
}

}  // namespace
}  // namespace assay
