// The order in which a search tries moves.
#ifndef ASSAY_PROOF_ORDERING_H_
#define ASSAY_PROOF_ORDERING_H_

#include <array>
#include <cstddef>
#include <cstdint>

#include "assay/proof/checking_squares.h"
#include "assay/rules/move.h"
#include "assay/rules/position.h"

namespace assay {

// What a search has learnt of quiet moves: two that cut off at each distance
// from the root, and how often each from-to pair did.
class QuietMemory {
 public:
  static constexpr int kPlies = 128;

  // The move cut off; the quiet moves before it did not.
  void NoteCutoff(Side side, Move move, int ply, int depth);
  void NoteFailure(Side side, Move move, int depth);
  int Rank(Side side, Move move, int ply) const;

 private:
  std::array<std::array<Move, 2>, kPlies> killers_{};
  static constexpr std::size_t kFromTo = 4096;  // pairs of squares
  std::array<std::array<std::int32_t, kFromTo>, 2> history_{};
};

// Captures and promotions.
bool IsTactical(const Position& position, Move move);

// What the move takes, and adds by promoting, in exchange values.
int Gain(const Position& position, Move move);

// Whether the piece moved can be taken for more than the move gained; `next`
// is the position after the move.
bool LosesMaterial(const Position& position, const Position& next, Move move);

// Moves with their ranks, taken best first. The list must outlive it.
class OrderedMoves {
 public:
  // The table's move, then captures and promotions by what they win, then
  // quiet moves by memory, then captures that lose material. Equal ranks keep
  // the generator's order.
  OrderedMoves(const Position& position, const MoveList& moves, Move table_move,
               const QuietMemory& memory, int ply);
  // Captures and promotions alone, by what they win; where `checks` is given,
  // then quiet moves that may give check. Of these, too, the table's is first.
  OrderedMoves(const Position& position, const MoveList& moves, Move table_move,
               const CheckingSquares* checks);

  // The next best; null after the last.
  Move Next();

 private:
  void Add(std::size_t index, std::int32_t rank);

  const MoveList& moves_;
  // Rank, then what puts earlier moves first, then the index in the list.
  std::array<std::uint64_t, MoveList::kCapacity> keys_;
  std::size_t size_ = 0;
  std::size_t next_ = 0;
};

}  // namespace assay

#endif  // ASSAY_PROOF_ORDERING_H_
