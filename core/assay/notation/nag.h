// Numeric annotation glyphs: the table of the PGN standard of 1994, section
// 10, as far as it assesses positions.
#ifndef ASSAY_NOTATION_NAG_H_
#define ASSAY_NOTATION_NAG_H_

#include <string_view>

namespace assay {

inline constexpr int kMostNag = 139;

// The standard's meaning of $0 to $139 in our words; empty for other numbers.
std::string_view NagMeaning(int nag);

}  // namespace assay

#endif  // ASSAY_NOTATION_NAG_H_
