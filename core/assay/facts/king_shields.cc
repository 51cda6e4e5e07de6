#include "assay/facts/king_shields.h"

namespace assay {

KingShields::KingShields(const Position& position)
    : in_check_(position.InCheck()) {
  const Bitboard occupied = position.Occupied();
  for (const Side side : kSides) {
    const Square king = position.King(side);
    const Side enemy = Other(side);
    const Bitboard queens = position.Pieces(enemy, PieceKind::kQueen);
    const Bitboard sliders =
        (RookAttacks(king, 0) &
         (position.Pieces(enemy, PieceKind::kRook) | queens)) |
        (BishopAttacks(king, 0) &
         (position.Pieces(enemy, PieceKind::kBishop) | queens));
    for (const Square slider : Each(sliders)) {
      const Bitboard line = Between(king, slider);
      watched_ |= line | Bit(slider);
      if (size_ < kMost) {
        shields_[size_++] = line & occupied;
      } else {
        overflow_ = true;
      }
    }
  }
}

}  // namespace assay
