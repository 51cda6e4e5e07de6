// Sliders on a line with a square, whatever stands between.
#ifndef ASSAY_FACTS_ALIGNED_H_
#define ASSAY_FACTS_ALIGNED_H_

#include "assay/base/bitboard.h"
#include "assay/rules/position.h"

namespace assay {

// Sliders of either side that would attack the square on an empty board.
inline Bitboard AlignedSliders(const Position& position, Square square) {
  const Bitboard queens = position.Pieces(PieceKind::kQueen);
  return (RookAttacks(square, 0) &
          (position.Pieces(PieceKind::kRook) | queens)) |
         (BishopAttacks(square, 0) &
          (position.Pieces(PieceKind::kBishop) | queens));
}

}  // namespace assay

#endif  // ASSAY_FACTS_ALIGNED_H_
