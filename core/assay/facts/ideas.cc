#include "assay/facts/ideas.h"

#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/rules/draw.h"

namespace assay {
namespace {

// What the piece or pawn on a square attacks.
Bitboard AttacksOf(const Position& position, Square square) {
  return AttacksOf(position.At(square), square, position.Occupied());
}

Bitboard PreyAmong(const Position& position, Bitboard squares) {
  Bitboard prey = 0;
  for (const Square square : Each(squares)) {
    if (IsPrey(position, square)) prey |= Bit(square);
  }
  return prey;
}

void AddFork(const Position& after, Side side, Square moved,
             std::vector<Claim>& claims) {
  const Bitboard pieces =
      after.Pieces(Other(side)) & ~after.Pieces(PieceKind::kPawn);
  const Bitboard attacked = AttacksOf(after, moved) & pieces;
  if (!HasMany(attacked)) return;
  const Bitboard prey = PreyAmong(after, attacked);
  if (!HasMany(prey)) return;
  claims.push_back(SquaresClaim(ClaimKind::kFork, side, Bit(moved), prey));
}

bool IsSlider(PieceKind kind) {
  return kind == PieceKind::kBishop || kind == PieceKind::kRook ||
         kind == PieceKind::kQueen;
}

void AddSkewers(const Position& after, Side side, Square moved,
                std::vector<Claim>& claims) {
  const PieceKind kind = after.At(moved).kind();
  if (!IsSlider(kind)) return;
  const Bitboard enemies = after.Pieces(Other(side));
  const Bitboard attacked = AttacksOf(after, moved);
  for (const Square first : Each(attacked & enemies)) {
    const Bitboard behind =
        PieceAttacks(kind, moved, after.Occupied() & ~Bit(first)) & ~attacked &
        enemies & Line(moved, first);
    if (behind == 0) continue;
    const Square second = First(behind);
    const PieceKind front = after.At(first).kind();
    const PieceKind back = after.At(second).kind();
    // In front of the king stands a pinned piece, not a skewered one.
    if (back == PieceKind::kKing ||
        (front != PieceKind::kKing &&
         ExchangeValue(front) < ExchangeValue(back)) ||
        ExchangeValueOnceGone(after, second, first) == 0) {
      continue;
    }
    Claim claim = SquaresClaim(ClaimKind::kSkewer, side, Bit(moved));
    claim.others = {first, second};
    claims.push_back(claim);
  }
}

void AddDiscovered(const Position& before, const Position& after, Side side,
                   Bitboard moved, std::vector<Claim>& claims) {
  const Bitboard enemies = after.Pieces(Other(side));
  for (const Square square : Each(after.Pieces(side) & ~moved)) {
    if (!IsSlider(after.At(square).kind())) continue;
    const Bitboard opened =
        AttacksOf(after, square) & ~AttacksOf(before, square) & enemies;
    const Bitboard prey = PreyAmong(after, opened);
    if (prey == 0) continue;
    claims.push_back(
        SquaresClaim(ClaimKind::kDiscovered, side, Bit(square), prey));
  }
}

// Whether something worth less than the piece attacks it.
bool AttackedByLess(const Position& position, Bitboard attackers,
                    PieceKind kind) {
  for (const Square square : Each(attackers)) {
    const PieceKind attacker = position.At(square).kind();
    if (attacker != PieceKind::kKing &&
        ExchangeValue(attacker) < ExchangeValue(kind)) {
      return true;
    }
  }
  return false;
}

void AddWinningPins(const Position& after, Side side,
                    std::vector<Claim>& claims) {
  const Side owner = Other(side);
  for (const Pin& pin : FindPins(after, owner)) {
    const Bitboard attackers =
        after.Attackers(side, pin.pinned, after.Occupied());
    const Bitboard defenders =
        after.Attackers(owner, pin.pinned, after.Occupied());
    if (PopCount(attackers) <= PopCount(defenders) &&
        !AttackedByLess(after, attackers, after.At(pin.pinned).kind())) {
      continue;
    }
    Claim claim = PinnedClaim(side, pin);
    claim.kind = ClaimKind::kPinWins;
    claims.push_back(claim);
  }
}

}  // namespace

bool IsPrey(const Position& position, Square square) {
  return position.At(square).kind() == PieceKind::kKing ||
         ExchangeValueOnceGone(position, square) > 0;
}

void AddOverloaded(const Position& position, Side side,
                   std::vector<Claim>& claims) {
  const Side owner = Other(side);
  const Bitboard occupied = position.Occupied();
  Bitboard guarded_by[kSquares] = {};
  const Bitboard things =
      position.Pieces(owner) & ~position.Pieces(PieceKind::kKing);
  for (const Square thing : Each(things)) {
    const Bitboard guards = position.Attackers(owner, thing, occupied);
    if (guards == 0 || HasMany(guards)) continue;
    if (position.Attackers(side, thing, occupied) == 0) continue;
    guarded_by[First(guards)] |= Bit(thing);
  }
  for (const Square guard : Each(position.Pieces(owner))) {
    if (!HasMany(guarded_by[guard])) continue;
    claims.push_back(SquaresClaim(ClaimKind::kOverloaded, side, Bit(guard),
                                  guarded_by[guard]));
  }
}

std::vector<Claim> IdeasShownBy(const Position& before, Move move) {
  const Side side = before.side_to_move();
  const Position after = before.After(move);
  std::vector<Claim> claims;
  AddFork(after, side, move.to(), claims);
  AddSkewers(after, side, move.to(), claims);
  // A castled rook has moved as well.
  const Bitboard moved =
      after.Pieces(side) & ~(before.Pieces(side) & ~Bit(move.from()));
  AddDiscovered(before, after, side, moved, claims);
  AddWinningPins(after, side, claims);
  AddOverloaded(after, side, claims);
  return claims;
}

bool IsBackRankMate(const Position& mated) {
  if (!IsCheckmate(mated)) return false;
  const Side loser = mated.side_to_move();
  const Square king = mated.King(loser);
  if (RelativeRank(loser, king) != 0) return false;
  const Bitboard ahead = KingAttacks(king) & RelativeRankMask(loser, 1);
  const Bitboard own_pawns = mated.Pieces(loser, PieceKind::kPawn);
  if ((ahead & own_pawns) == 0) return false;
  const Bitboard heavy =
      mated.Pieces(PieceKind::kRook) | mated.Pieces(PieceKind::kQueen);
  if ((mated.Checkers() & heavy & RelativeRankMask(loser, 0)) == 0)
    return false;
  for (const Square square : Each(ahead & ~own_pawns)) {
    if (!mated.IsAttacked(Other(loser), square)) return false;
  }
  return true;
}

}  // namespace assay
