// Cheap tests first: only pieces that are attacked can hang or be trapped, so
// the dear questions (exchange values after each move) are asked of few.
#include "assay/facts/danger.h"

#include "assay/facts/aligned.h"
#include "assay/facts/exchange.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

constexpr Bitboard kStartKnights = Bit(kB1) | Bit(kG1);
constexpr Bitboard kStartBishops = Bit(kC1) | Bit(kF1);

Bitboard ForSide(Side side, Bitboard white_squares) {
  return side == Side::kWhite ? white_squares : FlipRanks(white_squares);
}

// Whether the moved piece attacks the target from where it arrives.
bool AttacksFrom(const Position& position, Side side, Move move,
                 Square target) {
  const PieceKind kind =
      move.is_promotion() ? move.promotion() : position.At(move.from()).kind();
  if (kind == PieceKind::kPawn) {
    return Contains(PawnAttacks(side, move.to()), target);
  }
  const Bitboard occupied =
      (position.Occupied() & ~Bit(move.from())) | Bit(move.to());
  return Contains(PieceAttacks(kind, move.to(), occupied), target);
}

void AddPinsOn(const Position& position, Side side, Square behind, Pins& pins) {
  const Bitboard occupied = position.Occupied();
  const Side enemy = Other(side);
  const PieceKind behind_kind = position.At(behind).kind();
  const bool absolute = behind_kind == PieceKind::kKing;
  Bitboard sliders = AlignedSliders(position, behind) & position.Pieces(enemy);
  // Only what is worth less than the piece behind can pin to it.
  if (!absolute) sliders &= ~position.Pieces(PieceKind::kQueen);
  if (behind_kind == PieceKind::kRook) {
    sliders &= ~position.Pieces(PieceKind::kRook);
  }
  for (const Square slider : Each(sliders)) {
    const Bitboard between = Between(behind, slider) & occupied;
    if (between == 0 || HasMany(between)) continue;
    if ((between & position.Pieces(side)) == 0) continue;
    const Square pinned = First(between);
    if (!absolute) {
      const int value = ExchangeValue(behind_kind);
      const PieceKind kind = position.At(pinned).kind();
      if (kind == PieceKind::kKing || value <= ExchangeValue(kind)) continue;
    }
    if (pins.size < 32) pins.pins[pins.size++] = {pinned, slider, behind};
  }
}

// Whether something of the enemy that is worth less attacks the piece.
bool AttackedByLess(const Facts& facts, Side enemy, Square square,
                    PieceKind kind) {
  for (const PieceKind attacker : kAllKinds) {
    if (attacker == PieceKind::kKing ||
        ExchangeValue(attacker) >= ExchangeValue(kind)) {
      break;
    }
    if (Contains(facts.AttackedBy(enemy, attacker), square)) return true;
  }
  return false;
}

// Whether the piece has a square that no enemy attacks, even along a line that
// its leaving would open, and is free to go there: then nothing more need be
// asked. False says nothing.
bool HasPlainEscape(const Facts& facts, Square square) {
  const Position& position = facts.position();
  const Side side = position.At(square).side();
  const Side enemy = Other(side);
  if (facts.InCheck() || Contains(facts.Pinned(side), square)) return false;
  Bitboard escapes = facts.Attacks(square) & ~position.Pieces(side) &
                     ~facts.Attacked(enemy) &
                     ~position.Pieces(PieceKind::kKing);
  if (escapes == 0) return false;
  for (const Square attacker : Each(facts.Attackers(enemy, square))) {
    escapes &= ~Line(attacker, square);
  }
  return escapes != 0;
}

}  // namespace

Bitboard LoosePieces(const Facts& facts, Side side) {
  const Bitboard pieces = facts.position().Pieces(side) &
                          ~facts.Pawns(side).pawns &
                          ~facts.Own(side, PieceKind::kKing);
  return pieces & ~facts.Attacked(side);
}

Bitboard AttackedPieces(const Facts& facts, Side side) {
  return facts.position().Pieces(side) & facts.Attacked(Other(side)) &
         ~facts.Own(side, PieceKind::kKing);
}

// If a guard of value g can surely take back, whoever takes first with a piece
// of value a gains at most standing - a + g, since no more than the guard can
// be lost after that. What leaves a watched square might open a line to a king,
// so watched guards and whatever watched takers attack are left out, and so are
// the ranks where pawns promote.
Bitboard SafelyGuarded(const Facts& facts, Side side) {
  const Position& position = facts.position();
  const Side enemy = Other(side);
  const Bitboard watched = facts.Shields().watched();
  const auto by = [&](PieceKind kind) { return facts.AttackedBy(enemy, kind); };
  const Bitboard below_rook =
      by(PieceKind::kPawn) | by(PieceKind::kKnight) | by(PieceKind::kBishop);
  const Bitboard below_queen = below_rook | by(PieceKind::kRook);
  const Bitboard pawns = facts.Pawns(side).pawns;
  const Bitboard minors =
      facts.Own(side, PieceKind::kKnight) | facts.Own(side, PieceKind::kBishop);
  const Bitboard rooks = facts.Own(side, PieceKind::kRook);
  const Bitboard by_pawn = PawnAttacks(side, pawns & ~watched);
  const Bitboard by_minor =
      (minors & watched) != 0 ? kEmptySet
                              : facts.AttackedBy(side, PieceKind::kKnight) |
                                    facts.AttackedBy(side, PieceKind::kBishop);
  const Bitboard by_rook = (rooks & watched) != 0
                               ? kEmptySet
                               : facts.AttackedBy(side, PieceKind::kRook);
  Bitboard safe = (pawns & by_pawn & ~by(PieceKind::kPawn)) |
                  (minors & by_pawn & ~below_rook) |
                  (rooks & by_pawn & ~below_queen) |
                  (pawns & by_minor & ~below_rook) |
                  ((pawns | minors) & (by_minor | by_rook) & ~below_queen);
  safe &= ~watched & ~RankMask(0) & ~RankMask(7);
  for (const Square taker : Each(watched & position.Pieces(enemy))) {
    safe &= ~facts.Attacks(taker);
  }
  return safe;
}

Bitboard ThinlyGuarded(const Facts& facts, Side side) {
  return AttackedPieces(facts, side) & ~facts.Pawns(side).attacks &
         ~facts.AttackedTwice(side);
}

Pins FindPins(const Position& position, Side side) {
  Pins pins;
  // The cheapest slider is a bishop, so nothing below a rook can be behind.
  const Bitboard behind = position.Pieces(side, PieceKind::kKing) |
                          position.Pieces(side, PieceKind::kQueen) |
                          position.Pieces(side, PieceKind::kRook);
  for (const Square square : Each(behind)) {
    AddPinsOn(position, side, square, pins);
  }
  return pins;
}

bool IsTrapped(const Facts& facts, Square square) {
  return IsTrapped(facts, square, ExchangeValueOf(facts, square));
}

bool IsTrapped(const Facts& facts, Square square, int exchange_value) {
  const Position& position = facts.position();
  const Side side = position.At(square).side();
  const PieceKind kind = position.At(square).kind();
  if (exchange_value == 0 &&
      !AttackedByLess(facts, Other(side), square, kind)) {
    return false;
  }
  if (HasPlainEscape(facts, square)) return false;
  // A check on its own side, or one that forbids the other side's pass.
  if (facts.InCheck()) return false;
  const Position own_move =
      position.side_to_move() == side ? position : position.AfterPass();
  MoveList moves;
  LegalMoves(own_move, moves);
  for (const Move move : moves) {
    if (move.from() != square) continue;
    const Piece captured = position.At(move.to());
    if (!captured.empty() &&
        ExchangeValue(captured.kind()) >= ExchangeValue(kind)) {
      return false;
    }
    if (ExchangeValueOf(own_move.After(move), move.to()) == 0) return false;
  }
  return true;
}

int EarlyQueenChasers(const Facts& facts, Side side, Square queen) {
  const Position& position = facts.position();
  if (Relative(side, queen) == kD1 ||
      PopCount(UndevelopedPieces(facts, side)) < 2) {
    return -1;
  }
  const Side enemy = Other(side);
  const std::optional<Position> enemy_move = WithTurn(position, enemy);
  if (!enemy_move.has_value()) return -1;
  MoveList moves;
  LegalMoves(*enemy_move, moves);
  Bitboard chasers = 0;
  for (const Move move : moves) {
    const PieceKind kind = position.At(move.from()).kind();
    if (kind == PieceKind::kQueen || kind == PieceKind::kKing ||
        Contains(chasers, move.from()) || move.to() == queen) {
      continue;
    }
    if (!AttacksFrom(position, enemy, move, queen)) continue;
    const Position after = enemy_move->After(move);
    if (ExchangeValueOf(after, move.to()) == 0) chasers |= Bit(move.from());
  }
  return PopCount(chasers);
}

Bitboard UndevelopedPieces(const Facts& facts, Side side) {
  return (facts.Own(side, PieceKind::kKnight) & ForSide(side, kStartKnights)) |
         (facts.Own(side, PieceKind::kBishop) & ForSide(side, kStartBishops));
}

}  // namespace assay
