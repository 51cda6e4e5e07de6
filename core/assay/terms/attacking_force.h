// What there is to attack a king with.
#ifndef ASSAY_TERMS_ATTACKING_FORCE_H_
#define ASSAY_TERMS_ATTACKING_FORCE_H_

#include "assay/facts/facts.h"

namespace assay {

// A queen 2, a rook 1, at most 4. Own reasoning: a queen attacks as two rooks
// do.
inline constexpr int kFullForce = 4;
inline int AttackingForce(const Facts& facts, Side attacker) {
  const int force = 2 * PopCount(facts.Own(attacker, PieceKind::kQueen)) +
                    PopCount(facts.Own(attacker, PieceKind::kRook));
  return force < kFullForce ? force : kFullForce;
}

}  // namespace assay

#endif  // ASSAY_TERMS_ATTACKING_FORCE_H_
