// The order in which a search tries moves.
#ifndef ASSAY_PROOF_ORDERING_H_
#define ASSAY_PROOF_ORDERING_H_

#include <array>
#include <cstddef>
#include <cstdint>

#include "assay/rules/move.h"
#include "assay/rules/position.h"

namespace assay {

// What a search has learnt of quiet moves: two that cut off at each distance
// from the root, and how often each from-to pair did.
class QuietMemory {
 public:
  static constexpr int kPlies = 128;

  void NoteCutoff(Side side, Move move, int ply, int depth);
  int Rank(Side side, Move move, int ply) const;

 private:
  std::array<std::array<Move, 2>, kPlies> killers_{};
  static constexpr std::size_t kFromTo = 4096;  // pairs of squares
  std::array<std::array<std::int32_t, kFromTo>, 2> history_{};
};

// Moves with their ranks, taken best first.
class OrderedMoves {
 public:
  // The table's move, then captures and promotions by what they win, then
  // quiet moves by memory. Equal ranks keep the generator's order.
  OrderedMoves(const Position& position, const MoveList& moves, Move table_move,
               const QuietMemory& memory, int ply);

  // The next best; null after the last.
  Move Next();

 private:
  std::array<Move, MoveList::kCapacity> moves_;
  std::array<std::int32_t, MoveList::kCapacity> ranks_;
  std::size_t size_ = 0;
  std::size_t next_ = 0;
};

// Captures and promotions.
bool IsTactical(const Position& position, Move move);

}  // namespace assay

#endif  // ASSAY_PROOF_ORDERING_H_
