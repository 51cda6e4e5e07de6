#include "assay/plans/weaknesses.h"

#include "assay/facts/claim_makers.h"
#include "assay/facts/pawn_groups.h"

namespace assay {
namespace {

// Weaknesses by their nature, before asking whether they can move on.
Bitboard WeakByNature(const Facts& facts, Side owner) {
  const PawnFacts& pawns = facts.Pawns(owner);
  const Bitboard open = facts.HalfOpenFiles(Other(owner));
  // A base matters where what it holds up is locked.
  const Bitboard locked_heads = pawns.rammed & pawns.attacks;
  Bitboard bases = 0;
  for (const Square base :
       Each(pawns.chain_bases & ~RelativeRankMask(owner, 1))) {
    if ((PawnAttacks(owner, base) & locked_heads) != 0) bases |= Bit(base);
  }
  const Bitboard weak = pawns.isolated | (pawns.backward & open) |
                        pawns.doubled | HangingPair(facts, owner) | bases;
  return weak & ~pawns.attack_span & ~pawns.passed;
}

// Whether the pawn cannot well step forward.
bool IsFixed(const Facts& facts, Side owner, Square pawn) {
  const Square stop = First(Forward(owner, Bit(pawn)));
  if (!facts.position().At(stop).empty()) return true;
  const Side enemy = Other(owner);
  if (Contains(facts.Pawns(enemy).attacks, stop)) return true;
  const int against = PopCount(facts.Attackers(enemy, stop));
  return against > 0 && against >= PopCount(facts.Attackers(owner, stop));
}

}  // namespace

Bitboard FixedWeaknesses(const Facts& facts, Side owner) {
  Bitboard fixed = 0;
  for (const Square pawn : Each(WeakByNature(facts, owner))) {
    if (IsFixed(facts, owner, pawn)) fixed |= Bit(pawn);
  }
  return fixed;
}

void AddWeaknessClaims(const Facts& facts, Side owner, Square pawn,
                       std::vector<Claim>& claims) {
  const PawnFacts& pawns = facts.Pawns(owner);
  const auto add = [&claims, owner](ClaimKind kind, Square square) {
    claims.push_back(SquaresClaim(kind, owner, Bit(square)));
  };
  if (Contains(pawns.isolated, pawn)) add(ClaimKind::kIsolated, pawn);
  if (Contains(pawns.backward, pawn)) add(ClaimKind::kBackward, pawn);
  if (Contains(pawns.doubled, pawn)) {
    claims.push_back(DoubledClaim(facts, owner, FileOf(pawn)));
  }
  const Bitboard pair = HangingPair(facts, owner);
  if (Contains(pair, pawn)) {
    claims.push_back(SquaresClaim(ClaimKind::kHangingPair, owner, pair));
  }
  if (Contains(pawns.chain_bases, pawn)) {
    claims.push_back(ChainBaseClaim(facts, owner, pawn));
  }
}

}  // namespace assay
