// An explanation as plain text for a terminal or a file.
#ifndef ASSAY_EXPLAIN_TEXT_H_
#define ASSAY_EXPLAIN_TEXT_H_

#include <string>

#include "assay/explain/explanation.h"
#include "assay/explain/text_writer.h"

namespace assay {

// Several lines, the last ended by a line feed.
std::string ToText(const Explanation& explanation, const TextStyle& style = {});

}  // namespace assay

#endif  // ASSAY_EXPLAIN_TEXT_H_
