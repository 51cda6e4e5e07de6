// Pawns that cannot run away and that no pawn will guard well.
#ifndef ASSAY_PLANS_WEAKNESSES_H_
#define ASSAY_PLANS_WEAKNESSES_H_

#include <vector>

#include "assay/facts/claim.h"
#include "assay/facts/facts.h"

namespace assay {

// The owner's pawns that are isolated, backward on a half-open file, doubled,
// one of a hanging pair or the base of a locked chain, are not passed, have no
// neighbour that can still come to guard them, and cannot well step forward.
Bitboard FixedWeaknesses(const Facts& facts, Side owner);

// What makes the pawn weak, as claims.
void AddWeaknessClaims(const Facts& facts, Side owner, Square pawn,
                       std::vector<Claim>& claims);

}  // namespace assay

#endif  // ASSAY_PLANS_WEAKNESSES_H_
