#include "assay/plans/stops.h"

#include <algorithm>

#include "assay/facts/routes.h"
#include "assay/rules/movegen.h"

namespace assay {

Centipawns HangsBefore(const Position& position) {
  return position.InCheck() ? 0
                            : MostHanging(position, position.side_to_move());
}

Centipawns CostOf(const Position& position, Move move) {
  return CostOf(position, move, HangsBefore(position));
}

Centipawns CostOf(const Position& position, Move move, Centipawns before) {
  const Centipawns hangs =
      MostHanging(position.After(move), position.side_to_move());
  const Centipawns taken = move.type() == Move::Type::kEnPassant
                               ? ExchangeValue(PieceKind::kPawn)
                               : ExchangeValue(position.At(move.to()).kind());
  return std::max(0, hangs - before) - taken;
}

std::vector<Centipawns> LossesOf(const Position& position, Side side,
                                 const std::vector<Move>& moves) {
  std::vector<Centipawns> losses;
  Position at = position;
  for (const Move move : moves) {
    if (at.side_to_move() != side) {
      if (at.InCheck()) break;
      at = at.AfterPass();
    }
    if (!IsLegal(at, move)) break;
    const int taken = ExchangeValue(at.At(move.to()).kind());
    at = at.After(move);
    losses.push_back(ExchangeValueOf(at, move.to()) - taken);
  }
  return losses;
}

Square FailsAt(const Position& position, Side side,
               const std::vector<Move>& moves,
               const std::vector<Centipawns>& undisturbed) {
  Position at = position;
  for (std::size_t i = 0; i < moves.size(); ++i) {
    const Move move = moves[i];
    if (at.side_to_move() != side) {
      if (at.InCheck()) return kNoSquare;  // the answer is forced: no stop
      at = at.AfterPass();
    }
    if (!IsLegal(at, move)) return move.to();
    const int taken = ExchangeValue(at.At(move.to()).kind());
    at = at.After(move);
    const Centipawns loss = ExchangeValueOf(at, move.to()) - taken;
    // A lever's pawn may be meant to be taken: only what the answer adds to
    // the loss speaks against the plan.
    const Centipawns before =
        i < undisturbed.size() ? std::max(0, undisturbed[i]) : 0;
    if (loss - before >= kLosingStep) return move.to();
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
    const Bitboard before = AttacksOf(piece, move.from(), position.Occupied());
    const Bitboard after = AttacksOf(piece, move.to(), occupied);
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

bool HasSecondWay(const Position& after, Side side,
                  const std::vector<Move>& rest) {
  if (rest.empty()) return false;
  for (std::size_t i = 1; i < rest.size(); ++i) {
    if (rest[i].from() != rest[i - 1].to()) return false;
  }
  const Square from = rest.front().from();
  const Piece piece = after.At(from);
  if (piece.empty() || piece.side() != side ||
      piece.kind() == PieceKind::kPawn) {
    return false;
  }
  const Facts facts(after);
  const int most = std::min(static_cast<int>(rest.size()) + 1, kLongestRoute);
  const Square goal = rest.back().to();
  if (Reach(facts, from, most).MovesTo(goal) < 0) return false;
  // The goal itself must not be held against it; a king enters no such square.
  const bool held = after.Attackers(Other(side), goal, after.Occupied()) != 0;
  if (piece.kind() == PieceKind::kKing) return !held;
  return PopCount(after.Attackers(side, goal, after.Occupied())) >=
         PopCount(after.Attackers(Other(side), goal, after.Occupied()));
}

}  // namespace assay
