#include "assay/facts/endings.h"

namespace assay {

bool HasWrongBishop(const Facts& facts, Side side) {
  const Position& position = facts.position();
  const Bitboard bishops = facts.Own(side, PieceKind::kBishop);
  const Bitboard pawns = facts.Pawns(side).pawns;
  const Bitboard kings = position.Pieces(PieceKind::kKing);
  if (PopCount(bishops) != 1 || pawns == 0) return false;
  if (position.Occupied() != (bishops | pawns | kings)) return false;
  for (const int file : {0, 7}) {
    if ((pawns & ~FileMask(file)) != 0) continue;
    const Square promotion = Relative(side, MakeSquare(file, 7));
    return IsLight(promotion) != IsLight(First(bishops));
  }
  return false;
}

bool PassesSquareRule(const Facts& facts, Side side) {
  const Position& position = facts.position();
  const Bitboard pawn = facts.Pawns(side).pawns;
  const Bitboard kings = position.Pieces(PieceKind::kKing);
  if (pawn == 0 || HasMany(pawn) || position.Occupied() != (pawn | kings)) {
    return false;
  }
  const Square own_king = position.King(side);
  if (Contains(FrontSpan(side, pawn), own_king)) return false;
  const Square square = First(pawn);
  const int rank = RelativeRank(side, square);
  const int need = 7 - (rank == 1 ? 2 : rank);
  const Square promotion = Relative(side, MakeSquare(FileOf(square), 7));
  const int distance = KingDistance(position.King(Other(side)), promotion);
  return distance > (position.side_to_move() == side ? need : need + 1);
}

bool HasOpposition(const Facts& facts, Side side) {
  const Position& position = facts.position();
  if (position.side_to_move() == side) return false;
  const Square own = position.King(side);
  const Square enemy = position.King(Other(side));
  return Line(own, enemy) != 0 && KingDistance(own, enemy) % 2 == 0;
}

bool HasDirectOpposition(const Facts& facts, Side side) {
  const Square own = facts.position().King(side);
  const Square enemy = facts.position().King(Other(side));
  return FileOf(own) == FileOf(enemy) && KingDistance(own, enemy) == 2 &&
         facts.position().side_to_move() != side;
}

bool CanMateLoneKing(const Facts& facts, Side side) {
  const Position& position = facts.position();
  if (HasMany(position.Pieces(Other(side))) ||
      position.Pieces(PieceKind::kPawn) != 0) {
    return false;
  }
  const Bitboard bishops = facts.Own(side, PieceKind::kBishop);
  return (facts.Own(side, PieceKind::kQueen) |
          facts.Own(side, PieceKind::kRook)) != 0 ||
         (bishops != 0 && facts.Own(side, PieceKind::kKnight) != 0) ||
         ((bishops & kLightSquares) != 0 && (bishops & kDarkSquares) != 0);
}

Bitboard MatingCorners(const Facts& facts, Side side) {
  constexpr Bitboard kCorners = Bit(kA1) | Bit(kH1) | Bit(kA8) | Bit(kH8);
  if ((facts.Own(side, PieceKind::kQueen) |
       facts.Own(side, PieceKind::kRook)) != 0) {
    return kCorners;
  }
  const Bitboard bishops = facts.Own(side, PieceKind::kBishop);
  return ((bishops & kLightSquares) != 0 ? kCorners & kLightSquares : 0) |
         ((bishops & kDarkSquares) != 0 ? kCorners & kDarkSquares : 0);
}

namespace {

// All squares that the side's king can ever reach while no pawn moves.
Bitboard KingRegion(const Facts& facts, Side side) {
  const Bitboard walkable =
      ~facts.Pawns(side).pawns & ~facts.Pawns(Other(side)).attacks;
  Bitboard region = facts.Own(side, PieceKind::kKing);
  while (true) {
    Bitboard grown = region;
    for (const Square square : Each(region)) {
      grown |= KingAttacks(square) & walkable;
    }
    if (grown == region) return region;
    region = grown;
  }
}

}  // namespace

bool IsBlocked(const Facts& facts) {
  const Position& position = facts.position();
  const Bitboard pawns = position.Pieces(PieceKind::kPawn);
  const Bitboard kings = position.Pieces(PieceKind::kKing);
  if (pawns == 0 || position.Occupied() != (pawns | kings)) return false;
  for (const Side side : kSides) {
    const PawnFacts& own = facts.Pawns(side);
    if (own.rammed != own.pawns || own.levers != 0) return false;
  }
  for (const Side side : kSides) {
    if ((KingRegion(facts, side) & facts.Pawns(Other(side)).pawns) != 0) {
      return false;
    }
  }
  return position.en_passant() == kNoSquare;
}

Bitboard RooksBehind(const Facts& facts, Side side, Side owner, Square pawn) {
  return RookAttacks(pawn, facts.position().Occupied()) &
         RearSpan(owner, Bit(pawn)) & facts.Own(side, PieceKind::kRook);
}

}  // namespace assay
