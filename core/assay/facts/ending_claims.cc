#include "assay/facts/claim_lists.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/endings.h"
#include "assay/facts/kpk.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"

namespace assay {

Claim InsufficientClaim() {
  Claim claim;
  claim.kind = ClaimKind::kInsufficient;
  return claim;
}

Claim ToMoveClaim(const Facts& facts) {
  return SquaresClaim(ClaimKind::kToMove, facts.position().side_to_move(), 0);
}

Claim NoLegalMoveClaim(const Facts& facts) {
  const Position& position = facts.position();
  const Side side = position.side_to_move();
  return SquaresClaim(ClaimKind::kNoLegalMove, side, Bit(position.King(side)));
}

Claim ExactClaim(const Facts& facts) {
  const Position& position = facts.position();
  const Side side = position.side_to_move();
  Claim claim = SquaresClaim(ClaimKind::kExact, side, 0);
  if (const std::optional<KpkResult> result = LookUpKpk(position)) {
    claim.count = result->For(side);
  }
  return claim;
}

Claim OppositionClaim(const Facts& facts, Side side) {
  const Position& position = facts.position();
  Claim claim = SquaresClaim(ClaimKind::kOpposition, side, 0);
  claim.squares = {position.King(side), position.King(Other(side))};
  return claim;
}

void AddEndingClaims(const Facts& facts, std::vector<Claim>& claims) {
  const Position& position = facts.position();
  if (IsInsufficientMaterial(position)) claims.push_back(InsufficientClaim());
  claims.push_back(ToMoveClaim(facts));
  if (!HasLegalMove(position)) claims.push_back(NoLegalMoveClaim(facts));
  if (LookUpKpk(position).has_value()) claims.push_back(ExactClaim(facts));
  for (const Side side : kSides) {
    const Bitboard pawns = facts.Pawns(side).pawns;
    if (HasWrongBishop(facts, side)) {
      claims.push_back(
          SquaresClaim(ClaimKind::kWrongBishop, side,
                       pawns | facts.Own(side, PieceKind::kBishop)));
    }
    if (PassesSquareRule(facts, side)) {
      claims.push_back(SquaresClaim(ClaimKind::kSquareRule, side, pawns));
    }
    if (HasOpposition(facts, side)) {
      claims.push_back(OppositionClaim(facts, side));
    }
    for (const Side owner : kSides) {
      for (const Square pawn : Each(facts.Pawns(owner).passed)) {
        const Bitboard rooks = RooksBehind(facts, side, owner, pawn);
        if (rooks == 0) continue;
        claims.push_back(
            SquaresClaim(ClaimKind::kRookBehind, side, rooks, Bit(pawn)));
      }
    }
  }
}

std::vector<Claim> AllClaims(const Facts& facts) {
  std::vector<Claim> claims;
  claims.reserve(128);
  AddPawnClaims(facts, claims);
  AddCentreClaims(facts, claims);
  AddStructureClaims(facts, claims);
  AddPieceClaims(facts, claims);
  AddKingClaims(facts, claims);
  AddEndingClaims(facts, claims);
  AddTextbookClaims(facts, claims);
  AddSiegeClaims(facts, claims);
  return claims;
}

}  // namespace assay
