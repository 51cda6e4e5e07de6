#include "assay/proof/ordering.h"

#include <utility>

namespace assay {
namespace {

constexpr std::int32_t kTableRank = 1 << 30;
constexpr std::int32_t kTacticalRank = 1 << 28;
constexpr std::int32_t kKillerRank = 1 << 27;
constexpr std::int32_t kMostHistory = 1 << 26;

int FromTo(Move move) { return move.from() * kSquares + move.to(); }

// Most valuable victim first, by the least valuable capturing piece.
std::int32_t TacticalRank(const Position& position, Move move) {
  const PieceKind victim = move.type() == Move::Type::kEnPassant
                               ? PieceKind::kPawn
                               : position.At(move.to()).kind();
  const int won = ExchangeValue(victim) + ExchangeValue(move.promotion());
  return kTacticalRank + 16 * won - Index(position.At(move.from()).kind());
}

}  // namespace

bool IsTactical(const Position& position, Move move) {
  return !position.At(move.to()).empty() || move.is_promotion() ||
         move.type() == Move::Type::kEnPassant;
}

void QuietMemory::NoteCutoff(Side side, Move move, int ply, int depth) {
  if (ply < kPlies && killers_[ply][0] != move) {
    killers_[ply][1] = killers_[ply][0];
    killers_[ply][0] = move;
  }
  std::int32_t& history = history_[Index(side)][FromTo(move)];
  if (history < kMostHistory) history += depth * depth;
}

int QuietMemory::Rank(Side side, Move move, int ply) const {
  if (ply < kPlies) {
    if (killers_[ply][0] == move) return kKillerRank + 1;
    if (killers_[ply][1] == move) return kKillerRank;
  }
  return history_[Index(side)][FromTo(move)];
}

OrderedMoves::OrderedMoves(const Position& position, const MoveList& moves,
                           Move table_move, const QuietMemory& memory,
                           int ply) {
  for (const Move move : moves) {
    moves_[size_] = move;
    ranks_[size_] = move == table_move ? kTableRank
                    : IsTactical(position, move)
                        ? TacticalRank(position, move)
                        : memory.Rank(position.side_to_move(), move, ply);
    ++size_;
  }
}

Move OrderedMoves::Next() {
  if (next_ == size_) return Move();
  std::size_t best = next_;
  for (std::size_t i = next_ + 1; i < size_; ++i) {
    if (ranks_[i] > ranks_[best]) best = i;
  }
  // Rotate rather than swap: equal ranks keep their order.
  const Move move = moves_[best];
  const std::int32_t rank = ranks_[best];
  for (std::size_t i = best; i > next_; --i) {
    moves_[i] = moves_[i - 1];
    ranks_[i] = ranks_[i - 1];
  }
  moves_[next_] = move;
  ranks_[next_] = rank;
  ++next_;
  return move;
}

}  // namespace assay
