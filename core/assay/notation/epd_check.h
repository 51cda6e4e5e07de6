// Whether an EPD operation is what the standard says of its opcode: shared by
// the reader and the writer.
#ifndef ASSAY_NOTATION_EPD_CHECK_H_
#define ASSAY_NOTATION_EPD_CHECK_H_

#include <vector>

#include "assay/base/problem.h"
#include "assay/notation/epd.h"

namespace assay {

// Checks number, kind and range of the operands and turns those that are moves
// into operands of kind kMove, legal in the position. Adds to `problems` what
// is wrong; moves are let be where there is no position.
void CheckEpdOperation(const Position* position, EpdOperation& operation,
                       std::vector<Problem>& problems);

// The value of a whole number with or without a sign; nothing for other text
// and for what 64 bits do not hold.
std::optional<std::int64_t> ReadEpdInteger(std::string_view text);

}  // namespace assay

#endif  // ASSAY_NOTATION_EPD_CHECK_H_
