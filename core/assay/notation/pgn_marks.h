// Marks and signs of annotated games as NAGs.
#ifndef ASSAY_NOTATION_PGN_MARKS_H_
#define ASSAY_NOTATION_PGN_MARKS_H_

#include <cstdint>
#include <optional>
#include <string_view>

namespace assay {

// The NAG of a suffix mark: "!" 1, "?" 2, "!!" 3, "??" 4, "!?" 5, "?!" 6 (PGN
// standard of 1994, 8.2.3.8 and 10). Nothing for other runs of "!" and "?".
std::optional<std::uint8_t> NagOfMark(std::string_view mark);

// The NAG of a sign that printed annotation uses and PGN files have taken
// over (common practice, no source): "=" 10, "~" and "inf" 13, "+/=" or "+="
// 14, "=/+" or "=+" 15, "+/-" 16, "-/+" 17, "+-" 18, "-+" 19; and of two
// words: "RR" (an editor's remark) 145, "N" (a new move) 146, numbers that the
// standard's table leaves free.
std::optional<std::uint8_t> NagOfSign(std::string_view sign);

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_MARKS_H_
