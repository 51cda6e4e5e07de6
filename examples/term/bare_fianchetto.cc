#include "bare_fianchetto.h"

namespace {

using namespace assay;

// In the middlegame; in the ending there is no attack. The warning is common
// teaching, the size measured: from -15 to -40 results of games were predicted
// the better the more it was, least surely so at -40.
constexpr Tapered kWeight{-30, 0};

// The pawn's start square beside a castled king: g2, b2, g7 or b7; kNoSquare
// for a king elsewhere.
Square HomeOfKnightPawn(const Facts& facts, Side side) {
  const Square king = facts.position().King(side);
  const int file = FileOf(king);
  if (RelativeRank(side, king) != 0 || (file > 2 && file < 6)) return kNoSquare;
  return Relative(side, file <= 2 ? kB2 : kG2);
}

void Find(const Facts& facts, bench::OwnEntries& entries) {
  for (const Side side : kSides) {
    const Square home = HomeOfKnightPawn(facts, side);
    if (home == kNoSquare) continue;
    if ((facts.Pawns(side).pawns & Forward(side, Bit(home))) == 0) continue;
    const Bitboard colour = IsLight(home) ? kLightSquares : kDarkSquares;
    const Side enemy = Other(side);
    if ((facts.Own(side, PieceKind::kBishop) & colour) != 0 ||
        (facts.Own(enemy, PieceKind::kBishop) & colour) == 0 ||
        facts.Own(enemy, PieceKind::kQueen) == 0) {
      continue;
    }
    entries.Add(side, kWeight, Bit(home));
  }
}

}  // namespace

bench::OwnTerm BareFianchetto() {
  return {"bare_fianchetto", "Bare fianchetto",
          "The knight's pawn beside a castled king has stepped up one square; "
          "the side has no bishop on the colour of the square that it left, "
          "the opponent has one, and a queen.",
          Find};
}
