// Pawns that count together: pairs, and passed pawns far from the rest.
#ifndef ASSAY_FACTS_PAWN_GROUPS_H_
#define ASSAY_FACTS_PAWN_GROUPS_H_

#include "assay/facts/facts.h"

namespace assay {

// Squares on adjacent files at most one rank from the pawn's: a passed pawn
// there is connected with it.
Bitboard ConnectedSquares(Square pawn);

// For a passed pawn: whether another own pawn and some enemy pawn are left,
// and every enemy pawn is at least three files away.
bool IsOutsidePassed(const Facts& facts, Side side, Square pawn);

// The two pawns of a hanging pair of the side, or an empty set. A side cannot
// have two such pairs that share no file and both be found here: the first
// from the a-file is given.
Bitboard HangingPair(const Facts& facts, Side side);

}  // namespace assay

#endif  // ASSAY_FACTS_PAWN_GROUPS_H_
