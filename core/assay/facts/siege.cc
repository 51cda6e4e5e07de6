#include "assay/facts/siege.h"

#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/facts/routes.h"

namespace assay {

namespace {

// From where each kind of walking piece attacks the target: attacks are
// symmetric, so one look-up from the target serves all pieces of a kind.
class Approaches {
 public:
  Approaches(const Facts& facts, Side side, Square target) {
    const Bitboard occupied = facts.position().Occupied();
    const Bitboard stops = ~facts.position().Pieces(side) & ~Bit(target) &
                           ~facts.Pawns(Other(side)).attacks;
    const Bitboard bishop = BishopAttacks(target, occupied) & stops;
    const Bitboard rook = RookAttacks(target, occupied) & stops;
    from_[Index(PieceKind::kKnight)] = KnightAttacks(target) & stops;
    from_[Index(PieceKind::kBishop)] = bishop;
    from_[Index(PieceKind::kRook)] = rook;
    from_[Index(PieceKind::kQueen)] = bishop | rook;
  }
  Bitboard Of(PieceKind kind) const { return from_[Index(kind)]; }

 private:
  Bitboard from_[kPieceKinds] = {};
};

}  // namespace

ComerList Comers(const Facts& facts, Side side, Square target, int moves) {
  ComerList found;
  const auto add = [&found](Square from, int needed) {
    if (found.size < 16) found.comers[found.size++] = {from, needed};
  };
  const Position& position = facts.position();
  const Bitboard there = facts.Attackers(side, target);
  for (const Square square : Each(there)) add(square, 0);
  if (moves == 0) return found;
  const Bitboard walkers = position.Pieces(side) & ~facts.Pawns(side).pawns &
                           ~facts.Own(side, PieceKind::kKing) & ~there &
                           ~Bit(target) & ~facts.Pinned(side);
  const Approaches approaches(facts, side, target);
  Bitboard later = 0;
  for (const Square square : Each(walkers)) {
    const PieceKind kind = position.At(square).kind();
    if ((facts.Attacks(square) & approaches.Of(kind)) != 0) {
      add(square, 1);
    } else {
      later |= Bit(square);
    }
  }
  if (moves == 1) return found;
  for (const Square square : Each(later)) {
    const int needed = Reach(facts, square, moves).MovesToAttack(target);
    if (needed >= 0) add(square, needed);
  }
  // Insertion sort: stable, and std::stable_sort would allocate.
  for (int i = 1; i < found.size; ++i) {
    const Comer comer = found.comers[i];
    int at = i;
    for (; at > 0 && found.comers[at - 1].moves > comer.moves; --at) {
      found.comers[at] = found.comers[at - 1];
    }
    found.comers[at] = comer;
  }
  return found;
}

ComerList Muster(const Facts& facts, Side side, Square target, int moves) {
  ComerList mustered;
  for (const Comer& comer : Comers(facts, side, target, moves)) {
    if (comer.moves > moves) break;
    moves -= comer.moves;
    mustered.comers[mustered.size++] = comer;
  }
  return mustered;
}

int MusterCountInOneMove(const Facts& facts, Side side, Square target) {
  const Position& position = facts.position();
  const Bitboard there = facts.Attackers(side, target);
  const Bitboard walkers = position.Pieces(side) & ~facts.Pawns(side).pawns &
                           ~facts.Own(side, PieceKind::kKing) & ~there &
                           ~Bit(target) & ~facts.Pinned(side);
  const int count = PopCount(there);
  if (walkers == 0) return count;
  const Approaches approaches(facts, side, target);
  for (const Square square : Each(walkers)) {
    const Bitboard stops = approaches.Of(position.At(square).kind());
    if ((facts.Attacks(square) & stops) != 0) return count + 1;
  }
  return count;
}

Claim SiegeCountClaim(const Facts& facts, Side side, Square target, int moves) {
  const int within = std::clamp(moves, 0, kMostSiegeMoves);
  Claim claim = SquaresClaim(ClaimKind::kSiegeCount, side, Bit(target));
  for (const Comer& comer : Muster(facts, side, target, within)) {
    claim.others.Add(comer.from);
    ++claim.count;
  }
  claim.other_count = Muster(facts, Other(side), target, within).size;
  claim.tempi = within;
  return claim;
}

}  // namespace assay
