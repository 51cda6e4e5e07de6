// Text inside HTML and SVG.
#ifndef ASSAY_LESSON_MARKUP_H_
#define ASSAY_LESSON_MARKUP_H_

#include <string>
#include <string_view>

namespace assay {

// The text with &, <, >, " and ' as references: safe between tags and in
// quoted attributes. Control characters that documents may not have are left
// out.
std::string Escaped(std::string_view text);

// "<p class="why">text</p>" and a line feed; the text is escaped, the class
// left out where it is empty.
std::string Element(std::string_view name, std::string_view css_class,
                    std::string_view text);

}  // namespace assay

#endif  // ASSAY_LESSON_MARKUP_H_
