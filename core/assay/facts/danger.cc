// Cheap tests first: only pieces that are attacked can hang or be trapped, so
// the dear questions (exchange values after each move) are asked of few.
#include "assay/facts/danger.h"

#include "assay/facts/exchange.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

constexpr Bitboard kStartKnights = Bit(kB1) | Bit(kG1);
constexpr Bitboard kStartBishops = Bit(kC1) | Bit(kF1);

Bitboard ForSide(Side side, Bitboard white_squares) {
  return side == Side::kWhite ? white_squares : FlipRanks(white_squares);
}

// The position with `side` to move, by a pass where it is not; false where
// the pass would leave a king in check.
bool WithSideToMove(const Position& position, Side side, Position& result) {
  if (position.side_to_move() == side) {
    result = position;
    return true;
  }
  if (position.InCheck()) return false;
  result = position.AfterPass();
  return true;
}

void AddPinsOn(const Facts& facts, Side side, Square behind,
               std::vector<Pin>& pins) {
  const Position& position = facts.position();
  const Bitboard occupied = position.Occupied();
  const Side enemy = Other(side);
  const PieceKind behind_kind = position.At(behind).kind();
  const bool absolute = behind_kind == PieceKind::kKing;
  const Bitboard queens = facts.Own(enemy, PieceKind::kQueen);
  const Bitboard sliders =
      (RookAttacks(behind, 0) & (facts.Own(enemy, PieceKind::kRook) | queens)) |
      (BishopAttacks(behind, 0) &
       (facts.Own(enemy, PieceKind::kBishop) | queens));
  for (const Square slider : Each(sliders)) {
    const Bitboard between = Between(behind, slider) & occupied;
    if (between == 0 || HasMany(between)) continue;
    if ((between & position.Pieces(side)) == 0) continue;
    const Square pinned = First(between);
    if (!absolute) {
      const int value = ExchangeValue(behind_kind);
      const PieceKind kind = position.At(pinned).kind();
      if (kind == PieceKind::kKing || value <= ExchangeValue(kind) ||
          value <= ExchangeValue(position.At(slider).kind())) {
        continue;
      }
    }
    pins.push_back({pinned, slider, behind});
  }
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

std::vector<Pin> FindPins(const Facts& facts, Side side) {
  std::vector<Pin> pins;
  const Bitboard behind =
      facts.position().Pieces(side) & ~facts.Pawns(side).pawns;
  for (const Square square : Each(behind)) {
    AddPinsOn(facts, side, square, pins);
  }
  return pins;
}

bool IsTrapped(const Facts& facts, Square square) {
  const Position& position = facts.position();
  const Piece piece = position.At(square);
  const Side side = piece.side();
  const Side enemy = Other(side);
  if (!Contains(facts.Attacked(enemy), square)) return false;
  Position own_move = position;
  if (position.side_to_move() == side
          ? position.InCheck()
          : !WithSideToMove(position, side, own_move)) {
    return false;
  }
  const int value = ExchangeValue(piece.kind());
  bool attacked_by_less = false;
  for (const Square from : Each(facts.Attackers(enemy, square))) {
    const PieceKind kind = position.At(from).kind();
    attacked_by_less |= kind != PieceKind::kKing && ExchangeValue(kind) < value;
  }
  if (!attacked_by_less && ExchangeValueOf(position, square) == 0) return false;
  MoveList moves;
  LegalMoves(own_move, moves);
  for (const Move move : moves) {
    if (move.from() != square) continue;
    const Piece captured = position.At(move.to());
    if (!captured.empty() && ExchangeValue(captured.kind()) >= value) {
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
  Position enemy_move = position;
  if (!WithSideToMove(position, enemy, enemy_move)) return -1;
  MoveList moves;
  LegalMoves(enemy_move, moves);
  Bitboard chasers = 0;
  for (const Move move : moves) {
    const PieceKind kind = position.At(move.from()).kind();
    if (kind == PieceKind::kQueen || kind == PieceKind::kKing ||
        Contains(chasers, move.from()) || move.to() == queen) {
      continue;
    }
    const Position after = enemy_move.After(move);
    const bool attacks =
        Contains(after.Attackers(enemy, queen, after.Occupied()), move.to());
    if (attacks && ExchangeValueOf(after, move.to()) == 0) {
      chasers |= Bit(move.from());
    }
  }
  return PopCount(chasers);
}

Bitboard UndevelopedPieces(const Facts& facts, Side side) {
  return (facts.Own(side, PieceKind::kKnight) & ForSide(side, kStartKnights)) |
         (facts.Own(side, PieceKind::kBishop) & ForSide(side, kStartBishops));
}

}  // namespace assay
