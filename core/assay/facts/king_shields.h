// What stands between kings and enemy sliders: which captures may uncover a
// check.
#ifndef ASSAY_FACTS_KING_SHIELDS_H_
#define ASSAY_FACTS_KING_SHIELDS_H_

#include "assay/base/bitboard.h"
#include "assay/rules/position.h"

namespace assay {

// For each enemy slider on a line with a king (of either side), the pieces
// between the two.
class KingShields {
 public:
  KingShields() = default;
  explicit KingShields(const Position& position);

  bool in_check() const { return in_check_; }
  // Whether some king would be in check, or is already, once all these pieces
  // have left their squares. Never wrongly false.
  bool MayFail(Bitboard leaving) const {
    if (in_check_ || overflow_) return true;
    for (int i = 0; i < size_; ++i) {
      if ((shields_[i] & ~leaving) == 0) return true;
    }
    return false;
  }
  // Squares whose emptying may uncover a check; all of them while a king is in
  // check.
  Bitboard watched() const {
    return in_check_ || overflow_ ? kAllSquares : watched_;
  }

 private:
  static constexpr int kMost = 16;
  Bitboard shields_[kMost];
  int size_ = 0;
  Bitboard watched_ = 0;
  bool in_check_ = false;
  bool overflow_ = false;  // more sliders than can be kept: all is suspect
};

}  // namespace assay

#endif  // ASSAY_FACTS_KING_SHIELDS_H_
