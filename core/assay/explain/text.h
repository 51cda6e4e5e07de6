// An explanation as plain text for a terminal or a file.
#ifndef ASSAY_EXPLAIN_TEXT_H_
#define ASSAY_EXPLAIN_TEXT_H_

#include <string>

#include "assay/explain/explanation.h"

namespace assay {

struct TextStyle {
  bool colour = false;     // ANSI bold and dim; for terminals only
  bool ledger = false;     // every entry with its value
  std::size_t width = 80;  // columns that sentences are wrapped to
};

// Several lines, the last ended by a line feed.
std::string ToText(const Explanation& explanation, const TextStyle& style = {});

// Centipawns as signed pawns with two decimals: "+0.42", "-1.05", "0.00".
std::string PawnsText(Centipawns value);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_TEXT_H_
