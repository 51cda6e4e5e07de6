// Facts of endings that need no search.
#ifndef ASSAY_FACTS_ENDINGS_H_
#define ASSAY_FACTS_ENDINGS_H_

#include "assay/facts/facts.h"

namespace assay {

// A bishop and rook pawn(s) of one file against a bare king, the promotion
// square not of the bishop's colour: the side that has them; false for others.
bool HasWrongBishop(const Facts& facts, Side side);

// Only kings and one passed pawn of the side, and the enemy king outside its
// square: the pawn promotes by itself.
bool PassesSquareRule(const Facts& facts, Side side);

// The kings face each other on a file, rank or diagonal with an odd number of
// squares between, and the side is not to move.
bool HasOpposition(const Facts& facts, Side side);

// The side has no pawns but pieces that can force mate (a queen, a rook,
// bishops of both colours, or bishop and knight), and the enemy a king alone.
bool CanMateLoneKing(const Facts& facts, Side side);

// The corners where they can mate: those of the bishop's colour for bishop and
// knight, else all.
Bitboard MatingCorners(const Facts& facts, Side side);

// The direct opposition: the kings on one file with one square between, the
// side not to move.
bool HasDirectOpposition(const Facts& facts, Side side);

// Kings and pawns alone, every pawn rammed, no pawn able to capture, and no
// king able to reach an enemy pawn over squares that no enemy pawn guards:
// nothing can change any more.
bool IsBlocked(const Facts& facts);

// Rooks of the side behind the passed pawn (of either side, seen from the
// pawn's owner), with nothing between.
Bitboard RooksBehind(const Facts& facts, Side side, Side owner, Square pawn);

}  // namespace assay

#endif  // ASSAY_FACTS_ENDINGS_H_
