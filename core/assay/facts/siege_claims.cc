// Claims that answer a question, for the questions worth asking: who controls
// the centre, what bears on a weakness, how far the kings are from a passed
// pawn; and the routes to outposts.
#include "assay/facts/claim_lists.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/routes.h"
#include "assay/facts/siege.h"

namespace assay {
namespace {

// How far ahead a siege is counted: moves enough for two pieces to come.
constexpr int kSiegeMoves = 3;

constexpr Bitboard kCentreSquares = Bit(kD4) | Bit(kE4) | Bit(kD5) | Bit(kE5);

// Pawns of the side that no pawn can guard now: what a siege is laid to.
Bitboard WeakPawns(const Facts& facts, Side side) {
  const PawnFacts& own = facts.Pawns(side);
  return own.isolated | own.backward | (own.doubled & ~own.attacks);
}

}  // namespace

Claim KingDistanceClaim(const Facts& facts, Side side, Square square) {
  Claim claim = SquaresClaim(ClaimKind::kKingDistance, side, 0);
  const Square king = facts.position().King(side);
  claim.squares = {king, square};
  claim.count = KingDistance(king, square);
  return claim;
}

void AddSiegeClaims(const Facts& facts, std::vector<Claim>& claims) {
  const Position& position = facts.position();
  for (const Side side : kSides) {
    const Side enemy = Other(side);
    for (const Square square : Each(kCentreSquares)) {
      claims.push_back(ControlClaim(facts, side, square));
    }
    for (const SquareList& route : OutpostRoutes(facts, side)) {
      Claim claim = SquaresClaim(ClaimKind::kOutpostRoute, side, 0);
      claim.squares = route;
      claims.push_back(claim);
    }
    const Bitboard attacked = position.Pieces(enemy) & facts.Attacked(side) &
                              ~facts.Own(enemy, PieceKind::kKing);
    for (const Square target : Each(attacked)) {
      claims.push_back(AttackCountClaim(facts, side, target));
    }
    for (const Square target : Each(WeakPawns(facts, enemy))) {
      claims.push_back(SiegeCountClaim(facts, side, target, kSiegeMoves));
    }
    for (const Side owner : kSides) {
      for (const Square pawn : Each(facts.Pawns(owner).passed)) {
        claims.push_back(KingDistanceClaim(facts, side, pawn));
      }
    }
  }
}

}  // namespace assay
