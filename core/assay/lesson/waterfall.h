// A score as steps: from zero, reason by reason, to what they come to.
#ifndef ASSAY_LESSON_WATERFALL_H_
#define ASSAY_LESSON_WATERFALL_H_

#include <string>

#include "assay/explain/catalogue.h"
#include "assay/explain/explanation.h"

namespace assay {

// A list whose last step ends at the score, exactly: reasons heaviest first,
// then all that is lighter in one step.
std::string Waterfall(const Explanation& explanation,
                      const Catalogue& words = Catalogue::English());

}  // namespace assay

#endif  // ASSAY_LESSON_WATERFALL_H_
