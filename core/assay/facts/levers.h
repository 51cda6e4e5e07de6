// Pawn breaks: advances after which the pawn forms a lever.
#ifndef ASSAY_FACTS_LEVERS_H_
#define ASSAY_FACTS_LEVERS_H_

#include <array>

#include "assay/facts/claim_makers.h"
#include "assay/facts/facts.h"

namespace assay {

// All lever moves of one side, on the stack: at most two advances for each of
// eight pawns.
struct LeverMoves {
  std::array<LeverMove, 16> moves;
  int size = 0;

  const LeverMove* begin() const { return moves.data(); }
  const LeverMove* end() const { return moves.data() + size; }
};

// Advances of one or two steps that are legal for the side (after a pass if it
// is not to move) and that form a lever. None for either side while the side
// to move is in check. The second form finds those that attack a pawn of
// `prey`.
LeverMoves FindLeverMoves(const Facts& facts, Side side);
LeverMoves FindLeverMoves(const Facts& facts, Side side, Bitboard prey);

}  // namespace assay

#endif  // ASSAY_FACTS_LEVERS_H_
