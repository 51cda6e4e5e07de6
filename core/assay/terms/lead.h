// Which side is ahead in what is counted once for both.
#ifndef ASSAY_TERMS_LEAD_H_
#define ASSAY_TERMS_LEAD_H_

#include "assay/rules/position.h"

namespace assay {

struct Lead {
  // White's count less Black's.
  constexpr explicit Lead(int balance)
      : side(balance > 0 ? Side::kWhite : Side::kBlack),
        by(balance > 0 ? balance : -balance) {}

  Side side;  // Black's where nobody is ahead
  int by;     // 0: nobody is
};

}  // namespace assay

#endif  // ASSAY_TERMS_LEAD_H_
