// Endings of few pieces whose result the textbooks know by name.
//
// Each is defined beside its claim in proto/assay/v1/claim.proto, narrowly
// enough that the result holds in every position that fits: each was worked out
// backwards from the end, over all placements, by a program of our own.
#ifndef ASSAY_FACTS_TEXTBOOK_ENDINGS_H_
#define ASSAY_FACTS_TEXTBOOK_ENDINGS_H_

#include "assay/facts/facts.h"

namespace assay {

// The squares from which a king helps a pawn of the side on `pawn` through:
// three squares two ranks ahead of a pawn on ranks 2 to 4; from rank 5 those
// one rank ahead, too; on rank 7 the squares around it on ranks 7 and 8. Empty
// for rook pawns, which have none that hold without more.
Bitboard KeySquares(Side side, Square pawn);

// Two kings and one pawn, of the side's, and its king on a key square of it.
bool IsOnKeySquare(const Facts& facts, Side side);

// The side wins: its king before its pawn on the seventh rank, the enemy king
// cut off by the rook.
bool IsLucena(const Facts& facts, Side side);

// The side, with a rook against rook and pawn, holds: Philidor's defence on the
// pawn's sixth rank, or its second stage, from behind.
bool IsPhilidor(const Facts& facts, Side side);

// The side, with a rook against rook and rook pawn, holds by attacking the pawn
// from the side.
bool IsVancura(const Facts& facts, Side side);

// The side's rook or bishop's pawn on the seventh rank, with its king, holds
// against a queen whose king is far.
bool HoldsQueen(const Facts& facts, Side side);

// The same where it is likely but not certain: the king on its last two ranks
// within two files of the pawn, the enemy king four moves away or more.
bool OftenHoldsQueen(const Facts& facts, Side side);

// The side, a pawn down with bishops of opposite colours, has its king ahead of
// the pawn where the enemy bishop cannot drive it off.
bool BlocksPawnOfOppositeBishop(const Facts& facts, Side side);

// Whether one of these says that the side cannot win, however well it plays.
bool CannotWin(const Facts& facts, Side side);

}  // namespace assay

#endif  // ASSAY_FACTS_TEXTBOOK_ENDINGS_H_
