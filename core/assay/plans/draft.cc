#include "assay/plans/draft.h"

#include "assay/facts/exchange.h"
#include "assay/rules/movegen.h"

namespace assay {

const char* Name(PlanKind kind) {
  constexpr const char* kNames[kPlanKinds] = {
      "siege",           "lever",    "expansion", "regroup",     "trade",
      "minority_attack", "majority", "passer",    "king_attack", "king_walk",
      "develop",         "file",     "restrain",  "reshape"};
  return kNames[static_cast<int>(kind)];
}

const char* Name(Standing standing) {
  constexpr const char* kNames[kStandings] = {"in_time", "slow", "stopped",
                                              "needs"};
  return kNames[static_cast<int>(standing)];
}

Centipawns Outlook::Score(const Position& at) const {
  return Sign(side) * (scores != nullptr ? scores->Of(at, weights)
                                         : LastingScoreOf(at, weights));
}

std::optional<Position> PlayAlone(const Position& position, Side side,
                                  const std::vector<Move>& moves) {
  Position at = position;
  for (const Move move : moves) {
    const std::optional<Position> own = WithTurn(at, side);
    if (!own.has_value() || !IsLegal(*own, move)) return std::nullopt;
    at = own->After(move);
  }
  return at;
}

std::vector<Move> WithPasses(const Position& position, Side side,
                             const std::vector<Move>& moves) {
  std::vector<Move> line;
  Side turn = position.side_to_move();
  for (const Move move : moves) {
    if (turn != side) line.emplace_back();
    line.push_back(move);
    turn = Other(side);
  }
  return line;
}

std::optional<Centipawns> GainAlone(const Outlook& outlook,
                                    const std::vector<Move>& moves) {
  std::optional<Position> end =
      PlayAlone(outlook.position, outlook.side, moves);
  if (end.has_value()) end = WithTurn(*end, outlook.position.side_to_move());
  if (!end.has_value()) return std::nullopt;
  return outlook.Score(*end) - outlook.Score(outlook.position);
}

bool StandsSafely(const Position& position, Square square) {
  return ExchangeValueOf(position, square) == 0;
}

Move FindMove(const Position& position, Side side, Square from, Square to) {
  const std::optional<Position> own = WithTurn(position, side);
  if (!own.has_value()) return Move();
  MoveList moves;
  LegalMovesTo(*own, Bit(to), moves);
  for (const Move move : moves) {
    const bool promotes =
        move.is_promotion() && move.promotion() != PieceKind::kQueen;
    if (move.from() == from && !promotes) return move;
  }
  return Move();
}

std::vector<Move> MovesOfRoute(const Outlook& outlook,
                               const SquareList& route) {
  std::vector<Move> moves;
  Position at = outlook.position;
  for (std::size_t i = 1; i < route.size(); ++i) {
    const Move move = FindMove(at, outlook.side, route[i - 1], route[i]);
    if (move.is_null()) return {};
    if (at.side_to_move() != outlook.side) at = at.AfterPass();
    at = at.After(move);
    const bool last = i + 1 == route.size();
    if (!last && !StandsSafely(at, route[i])) return {};
    moves.push_back(move);
  }
  return moves;
}

}  // namespace assay
