#include "assay/facts/king_shields.h"

#include "assay/facts/aligned.h"

namespace assay {

KingShields::KingShields(const Position& position)
    : in_check_(position.InCheck()) {
  const Bitboard occupied = position.Occupied();
  for (const Side side : kSides) {
    const Square king = position.King(side);
    const Bitboard sliders =
        AlignedSliders(position, king) & position.Pieces(Other(side));
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
