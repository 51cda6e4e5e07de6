#include "assay/proof/ordering.h"

#include <limits>
#include <utility>

#include "assay/facts/exchange.h"

namespace assay {
namespace {

constexpr std::int32_t kTableRank = 1 << 30;
constexpr std::int32_t kTacticalRank = 1 << 28;
constexpr std::int32_t kKillerRank = 1 << 27;
constexpr std::int32_t kMostHistory = 1 << 26;
// Captures that lose material come after every quiet move.
constexpr std::int32_t kBelowQuiet = 1 << 27;

int FromTo(Move move) { return move.from() * kSquares + move.to(); }

// Most valuable victim first, by the least valuable capturing piece.
std::int32_t TacticalRank(const Position& position, Move move) {
  return kTacticalRank + 16 * Gain(position, move) -
         Index(position.At(move.from()).kind());
}

// What is worth less than what takes it may be guarded.
bool MayLose(const Position& position, Move move) {
  return ExchangeValue(position.At(move.from()).kind()) > Gain(position, move);
}

std::int32_t RankWithLosses(const Position& position, Move move) {
  const std::int32_t rank = TacticalRank(position, move);
  return MayLose(position, move) &&
                 LosesMaterial(position, position.After(move), move)
             ? rank - kTacticalRank - kBelowQuiet
             : rank;
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

void QuietMemory::NoteFailure(Side side, Move move, int depth) {
  std::int32_t& history = history_[Index(side)][FromTo(move)];
  if (history > -kMostHistory) history -= depth;
}

int QuietMemory::Rank(Side side, Move move, int ply) const {
  if (ply < kPlies) {
    if (killers_[ply][0] == move) return kKillerRank + 1;
    if (killers_[ply][1] == move) return kKillerRank;
  }
  return history_[Index(side)][FromTo(move)];
}

int Gain(const Position& position, Move move) {
  const PieceKind victim = move.type() == Move::Type::kEnPassant
                               ? PieceKind::kPawn
                               : position.At(move.to()).kind();
  const int promoted = move.is_promotion() ? ExchangeValue(move.promotion()) -
                                                 ExchangeValue(PieceKind::kPawn)
                                           : 0;
  return ExchangeValue(victim) + promoted;
}

bool LosesMaterial(const Position& position, const Position& next, Move move) {
  const int gain = Gain(position, move);
  const Square to = move.to();
  // No more than the piece itself can be lost, but where a pawn takes it and
  // promotes.
  const bool promotes = RankOf(to) == 0 || RankOf(to) == 7;
  if (!promotes && gain >= ExchangeValue(next.At(to).kind())) return false;
  return ExchangeValueOf(next, to) > gain;
}

void OrderedMoves::Add(std::size_t index, std::int32_t rank) {
  const auto order = static_cast<std::uint64_t>(
      static_cast<std::int64_t>(rank) - std::numeric_limits<int>::min());
  keys_[size_++] =
      (order << 32) | ((MoveList::kCapacity - index) << 16) | index;
}

OrderedMoves::OrderedMoves(const Position& position, const MoveList& moves,
                           Move table_move, const QuietMemory& memory, int ply)
    : moves_(moves) {
  const Side side = position.side_to_move();
  for (std::size_t i = 0; i < moves.size(); ++i) {
    const Move move = moves[i];
    Add(i, move == table_move           ? kTableRank
           : IsTactical(position, move) ? RankWithLosses(position, move)
                                        : memory.Rank(side, move, ply));
  }
}

OrderedMoves::OrderedMoves(const Position& position, const MoveList& moves,
                           Move table_move, const CheckingSquares* checks)
    : moves_(moves) {
  for (std::size_t i = 0; i < moves.size(); ++i) {
    const Move move = moves[i];
    const bool tactical = IsTactical(position, move);
    if (!tactical && (checks == nullptr || !checks->MayCheck(position, move))) {
      continue;
    }
    Add(i, move == table_move ? kTableRank
           : tactical         ? TacticalRank(position, move)
                              : 0);
  }
}

Move OrderedMoves::Next() {
  if (next_ == size_) return Move();
  std::size_t best = next_;
  for (std::size_t i = next_ + 1; i < size_; ++i) {
    if (keys_[i] > keys_[best]) best = i;
  }
  std::swap(keys_[best], keys_[next_]);
  return moves_[keys_[next_++] & 0xFFFFU];
}

}  // namespace assay
