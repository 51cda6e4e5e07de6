#include "assay/facts/siege.h"

#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/facts/routes.h"

namespace assay {

std::vector<Comer> Comers(const Facts& facts, Side side, Square target,
                          int moves) {
  std::vector<Comer> comers;
  const Position& position = facts.position();
  const Bitboard there = facts.Attackers(side, target);
  for (const Square square : Each(there)) comers.push_back({square, 0});
  const Bitboard walkers = position.Pieces(side) & ~facts.Pawns(side).pawns &
                           ~facts.Own(side, PieceKind::kKing) & ~there &
                           ~Bit(target);
  for (const Square square : Each(walkers)) {
    const int needed = Reach(facts, square, moves).MovesToAttack(target);
    if (needed >= 0) comers.push_back({square, needed});
  }
  std::stable_sort(
      comers.begin(), comers.end(),
      [](const Comer& a, const Comer& b) { return a.moves < b.moves; });
  return comers;
}

std::vector<Comer> Muster(const Facts& facts, Side side, Square target,
                          int moves) {
  std::vector<Comer> mustered;
  for (const Comer& comer : Comers(facts, side, target, moves)) {
    if (comer.moves > moves) break;
    moves -= comer.moves;
    mustered.push_back(comer);
  }
  return mustered;
}

Claim SiegeCountClaim(const Facts& facts, Side side, Square target, int moves) {
  const int within = std::clamp(moves, 0, kMostSiegeMoves);
  Claim claim = SquaresClaim(ClaimKind::kSiegeCount, side, Bit(target));
  for (const Comer& comer : Muster(facts, side, target, within)) {
    claim.others.Add(comer.from);
    ++claim.count;
  }
  claim.other_count =
      static_cast<int>(Muster(facts, Other(side), target, within).size());
  claim.tempi = within;
  return claim;
}

}  // namespace assay
