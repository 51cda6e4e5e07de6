// Who stands better before and after something, in a sentence.
#ifndef ASSAY_EXPLAIN_STANDING_TEXT_H_
#define ASSAY_EXPLAIN_STANDING_TEXT_H_

#include "assay/explain/message.h"
#include "assay/proof/questions.h"

namespace assay {

// A score or a mate, White's view.
struct Standpoint {
  Centipawns score_cp = 0;
  int mate_in = 0;
};
Standpoint StandpointOf(const Proof& proof);

// As a sentence: what holds after, and what held before where it differs:
// "As before, White is slightly better.", "Before, the sides stood about equal;
// now Black is clearly better."
Message StandingSentence(const Standpoint& before, const Standpoint& after);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_STANDING_TEXT_H_
