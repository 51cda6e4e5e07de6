// Squares and pieces and their letters.
#include "assay/base/square.h"

#include <string>
#include <string_view>

#include "assay/base/piece.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

TEST(Square, HasANameThatIsReadBack) {
  for (int s = 0; s < kSquares; ++s) {
    const auto square = static_cast<Square>(s);
    EXPECT_EQ(ParseSquare(ToString(square)), square);
  }
  EXPECT_EQ(ToString(kA1), "a1");
  EXPECT_EQ(ToString(kH1), "h1");
  EXPECT_EQ(ToString(kE4), "e4");
  EXPECT_EQ(ToString(kA8), "a8");
  EXPECT_EQ(ToString(kNoSquare), "-");
}

TEST(Square, IsNotReadFromOtherTexts) {
  for (const std::string_view text :
       {"", "-", "e", "4", "e9", "e0", "i4", "E4", "4e", "e44", " e4", "`1"}) {
    EXPECT_EQ(ParseSquare(text), kNoSquare) << text;
  }
  EXPECT_EQ(ParseSquare(std::string_view("e\0", 2)), kNoSquare);
  EXPECT_EQ(ParseSquare("\xE5\xB4"), kNoSquare);
}

// Each player has a light square at the right hand: FIDE Laws 2.1, number
// from memory.
TEST(Square, HasItsColour) {
  for (const Square light : {kH1, kA8, kE4, kD5, kF1, kC8}) {
    EXPECT_TRUE(IsLight(light)) << ToString(light);
  }
  for (const Square dark : {kA1, kH8, kE5, kD4, kC1, kF8}) {
    EXPECT_FALSE(IsLight(dark)) << ToString(dark);
  }
}

TEST(Square, IsSeenByEitherSideAndOnEitherWing) {
  EXPECT_EQ(FlipRank(kE2), kE7);
  EXPECT_EQ(FlipFile(kB1), kG1);
  EXPECT_EQ(Relative(Side::kWhite, kE2), kE2);
  EXPECT_EQ(Relative(Side::kBlack, kE2), kE7);
  EXPECT_EQ(RelativeRank(Side::kWhite, kE2), 1);
  EXPECT_EQ(RelativeRank(Side::kBlack, kE2), 6);
}

TEST(Square, IsKingMovesAway) {
  EXPECT_EQ(KingDistance(kE4, kE4), 0);
  EXPECT_EQ(KingDistance(kE4, kF5), 1);
  EXPECT_EQ(KingDistance(kA1, kH8), 7);
  EXPECT_EQ(KingDistance(kA1, kC8), 7);
  EXPECT_EQ(KingDistance(kH4, kA5), 7) << "no way around the edge";
}

// The letters of FEN: PGN standard of 1994, 16.1.3.1.
TEST(Piece, HasItsFenLetter) {
  const std::string_view kinds = "PNBRQK";
  for (const PieceKind kind : kAllKinds) {
    const char upper = kinds[Index(kind)];
    const char lower = static_cast<char>(upper + ('a' - 'A'));
    EXPECT_EQ(FenLetter(Piece(Side::kWhite, kind)), upper);
    EXPECT_EQ(FenLetter(Piece(Side::kBlack, kind)), lower);
    EXPECT_EQ(PieceFromFenLetter(upper), Piece(Side::kWhite, kind));
    EXPECT_EQ(PieceFromFenLetter(lower), Piece(Side::kBlack, kind));
    EXPECT_EQ(Letter(kind), upper);
  }
  int letters = 0;
  for (int c = -128; c < 128; ++c) {
    if (!PieceFromFenLetter(static_cast<char>(c)).empty()) ++letters;
  }
  EXPECT_EQ(letters, 12);
}

TEST(Piece, KnowsItsKindSideAndName) {
  for (const Side side : kSides) {
    for (const PieceKind kind : kAllKinds) {
      EXPECT_EQ(Piece(side, kind).side(), side);
      EXPECT_EQ(Piece(side, kind).kind(), kind);
      EXPECT_FALSE(Piece(side, kind).empty());
    }
  }
  EXPECT_TRUE(Piece().empty());
  EXPECT_STREQ(Name(PieceKind::kPawn), "pawn");
  EXPECT_STREQ(Name(PieceKind::kKing), "king");
  EXPECT_STREQ(Name(PieceKind::kNone), "");
}

// Kaufman, "The Evaluation of Material Imbalances", Chess Life, March 1999:
// minor piece 3 1/4, rook 5, queen 9 3/4 pawns.
TEST(Piece, HasKaufmansExchangeValue) {
  EXPECT_EQ(ExchangeValue(PieceKind::kPawn), 100);
  EXPECT_EQ(ExchangeValue(PieceKind::kKnight), 325);
  EXPECT_EQ(ExchangeValue(PieceKind::kBishop), 325);
  EXPECT_EQ(ExchangeValue(PieceKind::kRook), 500);
  EXPECT_EQ(ExchangeValue(PieceKind::kQueen), 975);
  EXPECT_EQ(ExchangeValue(PieceKind::kKing), 0);
}

}  // namespace
}  // namespace assay
