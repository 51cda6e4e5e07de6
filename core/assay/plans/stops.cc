#include "assay/plans/stops.h"

#include <algorithm>

#include "assay/facts/exchange.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

Bitboard AttacksFrom(Piece piece, Square square, Bitboard occupied) {
  return piece.kind() == PieceKind::kPawn
             ? PawnAttacks(piece.side(), square)
             : PieceAttacks(piece.kind(), square, occupied);
}

}  // namespace

Centipawns MostHanging(const Position& position, Side side) {
  const Bitboard occupied = position.Occupied();
  Bitboard attacked = 0;
  for (const Square square : Each(position.Pieces(Other(side)))) {
    attacked |= AttacksFrom(position.At(square), square, occupied);
  }
  Centipawns most = 0;
  for (const Square square : Each(attacked & position.Pieces(side))) {
    most = std::max(most, ExchangeValueOf(position, square));
  }
  return most;
}

Centipawns CostOf(const Position& position, Move move) {
  const Side side = position.side_to_move();
  const Position after = position.After(move);
  // In check nothing can be told of what hung; the move had to be made.
  const Centipawns before =
      position.InCheck() ? 0 : MostHanging(position, side);
  const Centipawns hangs = MostHanging(after, side);
  const Centipawns taken = move.type() == Move::Type::kEnPassant
                               ? ExchangeValue(PieceKind::kPawn)
                               : ExchangeValue(position.At(move.to()).kind());
  return std::max(0, hangs - before) - taken;
}

std::optional<Position> WithTurn(const Position& position, Side side) {
  if (position.side_to_move() == side) return position;
  if (position.InCheck()) return std::nullopt;
  return position.AfterPass();
}

Square FailsAt(const Position& position, Side side,
               const std::vector<Move>& moves) {
  Position at = position;
  for (const Move move : moves) {
    if (at.side_to_move() != side) {
      if (at.InCheck()) return kNoSquare;  // the answer is forced: no stop
      at = at.AfterPass();
    }
    if (!IsLegal(at, move)) return move.to();
    const int taken = ExchangeValue(at.At(move.to()).kind());
    at = at.After(move);
    if (ExchangeValueOf(at, move.to()) - taken >= kLosingStep) {
      return move.to();
    }
  }
  return kNoSquare;
}

std::vector<Move> AnswersTo(const Position& position,
                            const std::vector<Move>& plan, Bitboard targets) {
  Bitboard squares = targets;
  Bitboard men = 0;
  for (const Move move : plan) {
    squares |= Bit(move.to()) | Between(move.from(), move.to());
    men |= Bit(move.from()) | Bit(move.to());
  }
  MoveList legal;
  LegalMoves(position, legal);
  const Bitboard enemies = position.Pieces(Other(position.side_to_move()));
  std::vector<Move> answers;
  for (const Move move : legal) {
    if (move.is_promotion()) continue;
    const Piece piece = position.At(move.from());
    const Bitboard occupied =
        (position.Occupied() & ~Bit(move.from())) | Bit(move.to());
    const Bitboard before =
        AttacksFrom(piece, move.from(), position.Occupied());
    const Bitboard after = AttacksFrom(piece, move.to(), occupied);
    const bool bears = Contains(men & enemies, move.to()) ||
                       Contains(squares, move.to()) ||
                       (after & ~before & squares) != 0;
    if (!bears) continue;
    const bool takes = Contains(enemies, move.to());
    if (!takes && position.After(move).InCheck()) continue;
    answers.push_back(move);
  }
  return answers;
}

}  // namespace assay
