#include "assay/facts/claim_lists.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/kings.h"

namespace assay {

Claim ShelterClaim(const Facts& facts, Side side) {
  Claim claim =
      SquaresClaim(ClaimKind::kShelter, side, ShelterPawns(facts, side));
  claim.count = ShelterGaps(facts, side);
  return claim;
}

Claim FlankPawnMovedClaim(Side side, Square pawn) {
  Claim claim = SquaresClaim(ClaimKind::kFlankPawnMoved, side, 0);
  claim.squares = {pawn,
                   MakeSquare(FileOf(pawn), side == Side::kWhite ? 1 : 6)};
  return claim;
}

Claim FileToKingClaim(const Facts& facts, Side side, int file) {
  const Side enemy = Other(side);
  return SquaresClaim(
      ClaimKind::kFileToKing, side, FileMask(file),
      facts.Own(enemy, PieceKind::kRook) | facts.Own(enemy, PieceKind::kQueen));
}

Claim KingAttackersClaim(const Facts& facts, Side side) {
  const Bitboard attackers = KingAttackers(facts, side);
  Claim claim = SquaresClaim(ClaimKind::kKingAttackers, side,
                             Bit(facts.position().King(side)), attackers);
  claim.count = PopCount(attackers);
  return claim;
}

Claim KingZoneClaim(const Facts& facts, Side side) {
  const AttackedZone zone = FindAttackedZone(facts, side);
  Claim claim = SquaresClaim(ClaimKind::kKingZone, side, zone.twice, zone.thin);
  claim.count = PopCount(zone.twice);
  claim.other_count = PopCount(zone.thin);
  return claim;
}

Claim KingPawnsClaim(const Facts& facts, Side side) {
  const Side enemy = Other(side);
  Claim claim = SquaresClaim(ClaimKind::kKingPawns, side,
                             facts.Own(side, PieceKind::kKing),
                             facts.Own(enemy, PieceKind::kKing));
  claim.count = KingMovesToPawns(facts, side);
  claim.other_count = KingMovesToPawns(facts, enemy);
  return claim;
}

Claim CheckSquareClaim(const Facts& facts, Side side, Square square) {
  return SquaresClaim(ClaimKind::kCheckSquare, side, Bit(square),
                      CheckersFrom(facts, side, square));
}

Claim InCheckClaim(const Facts& facts) {
  const Position& position = facts.position();
  const Side side = position.side_to_move();
  return SquaresClaim(ClaimKind::kInCheck, side, Bit(position.King(side)),
                      position.Checkers());
}

Claim DiagonalOpenClaim(const Facts& facts, Side side,
                        const OpenDiagonal& diagonal) {
  Claim claim =
      SquaresClaim(ClaimKind::kDiagonalOpen, side,
                   Bit(facts.position().King(side)), diagonal.attackers);
  for (const Square square : diagonal.squares) claim.squares.Add(square);
  return claim;
}

void AddKingClaims(const Facts& facts, std::vector<Claim>& claims) {
  const Position& position = facts.position();
  for (const Side side : kSides) {
    claims.push_back(ShelterClaim(facts, side));
    for (const Square pawn : Each(MovedFlankPawns(facts, side))) {
      claims.push_back(FlankPawnMovedClaim(side, pawn));
    }
    for (const OpenDiagonal& diagonal : FindOpenDiagonals(facts, side)) {
      claims.push_back(DiagonalOpenClaim(facts, side, diagonal));
    }
    const Bitboard files = FilesToKing(facts, side);
    for (const Square first : Each(files & kRank1)) {
      claims.push_back(FileToKingClaim(facts, side, FileOf(first)));
    }
    if (KingAttackers(facts, side) != 0) {
      claims.push_back(KingAttackersClaim(facts, side));
    }
    const Bitboard king = Bit(position.King(side));
    claims.push_back(KingZoneClaim(facts, side));
    if (position.Pieces(PieceKind::kPawn) != 0) {
      claims.push_back(KingPawnsClaim(facts, side));
    }
    for (const Square square : Each(CheckSquares(facts, side))) {
      claims.push_back(CheckSquareClaim(facts, side, square));
    }
    if (IsKingShut(facts, side)) {
      claims.push_back(SquaresClaim(ClaimKind::kKingShut, side, king));
    }
    if (IsCastled(facts, side)) {
      claims.push_back(SquaresClaim(ClaimKind::kCastled, side, king));
    }
    if (IsUncastled(facts, side)) {
      claims.push_back(SquaresClaim(ClaimKind::kUncastled, side, king));
    }
  }
  if (position.InCheck()) claims.push_back(InCheckClaim(facts));
}

}  // namespace assay
