// The look of a handout.
#ifndef ASSAY_LESSON_HANDOUT_STYLE_H_
#define ASSAY_LESSON_HANDOUT_STYLE_H_

#include <string>

namespace assay {

// What a sheet is to be printed on; that of the printer, where nobody says.
enum class Paper { kAny, kA4, kLetter };

// The content of its style element.
std::string HandoutStyle(Paper paper = Paper::kAny);

}  // namespace assay

#endif  // ASSAY_LESSON_HANDOUT_STYLE_H_
