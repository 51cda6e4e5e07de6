// What is true of bishops, knights and their squares.
#ifndef ASSAY_FACTS_PIECES_H_
#define ASSAY_FACTS_PIECES_H_

#include "assay/facts/facts.h"

namespace assay {

// Bishops of the side on both square colours.
bool HasBishopPair(const Facts& facts, Side side);

// Each side has exactly one bishop, on different square colours.
bool HasOppositeBishops(const Facts& facts);

// The pawns that make a bishop bad: own pawns on files c to f of its square
// colour whose stop square holds a pawn, where there are at least two and the
// bishop is not on a higher rank than all of them; else empty.
Bitboard BadBishopPawns(const Facts& facts, Side side, Square bishop);

// Enemy minor pieces that could ever stand on or attack the square, by square
// colour: any knight, and bishops of the square's colour.
Bitboard OutpostContesters(const Facts& facts, Side side, Square square);

// Own pawns on c3 or f3 (c6, f6) while the knight that would develop there
// still stands on its start square.
Bitboard SquareTakenPawns(const Facts& facts, Side side);

// Knights and bishops of the side with a pawn of either side on the square
// directly ahead.
Bitboard ScreenedMinors(const Facts& facts, Side side);

// Squares of the opponent's half of the board that the side attacks.
Bitboard FarControl(const Facts& facts, Side side);

// The start square of the knight that a pawn of the c- or f-file takes the
// natural square from: b1 or g1 (b8 or g8).
constexpr Square NaturalKnight(Side side, Square pawn) {
  return Relative(side, FileOf(pawn) == 2 ? kB1 : kG1);
}

}  // namespace assay

#endif  // ASSAY_FACTS_PIECES_H_
