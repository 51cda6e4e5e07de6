// The look of a handout.
#ifndef ASSAY_LESSON_HANDOUT_STYLE_H_
#define ASSAY_LESSON_HANDOUT_STYLE_H_

#include <string_view>

namespace assay {

// The content of its style element.
std::string_view HandoutStyle();

}  // namespace assay

#endif  // ASSAY_LESSON_HANDOUT_STYLE_H_
