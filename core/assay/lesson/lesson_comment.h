// What an explanation comes to in a PGN's comment: a few sentences.
#ifndef ASSAY_LESSON_LESSON_COMMENT_H_
#define ASSAY_LESSON_LESSON_COMMENT_H_

#include <string>

#include "assay/explain/explanation.h"

namespace assay {

// The summary, then each side's best plan, then what the opponent threatens.
// Each sentence is one of the explanation's own.
std::string LessonComment(const Explanation& explanation);

}  // namespace assay

#endif  // ASSAY_LESSON_LESSON_COMMENT_H_
