// How much an open centre hurries things: development and kings count by it.
#ifndef ASSAY_TERMS_OPENNESS_H_
#define ASSAY_TERMS_OPENNESS_H_

#include "assay/facts/facts.h"

namespace assay {

// 4 for an open centre, 3 where it can open, 2 fixed, 1 closed: behind locked
// pawns there is time. Own reasoning after Kotov's types of centre.
inline constexpr int kFullOpenness = 4;
constexpr int Openness(Centre centre) {
  switch (centre) {
    case Centre::kOpen:
      return kFullOpenness;
    case Centre::kFixed:
      return 2;
    case Centre::kClosed:
      return 1;
    case Centre::kTension:
    case Centre::kMobile:
    case Centre::kUnresolved:
      break;
  }
  return 3;
}

}  // namespace assay

#endif  // ASSAY_TERMS_OPENNESS_H_
