// A term's name for readers in their language.
#ifndef ASSAY_EXPLAIN_TERM_TITLE_H_
#define ASSAY_EXPLAIN_TERM_TITLE_H_

#include <string>
#include <string_view>

#include "assay/explain/catalogue.h"
#include "assay/terms/term.h"

namespace assay {

// The catalogue of terms has English titles, other languages have rows.
inline std::string TermTitle(const TermInfo& info, const Catalogue& words) {
  const std::string_view row = words.Find("term." + std::string(info.name));
  return std::string(row.empty() ? info.title : row);
}

}  // namespace assay

#endif  // ASSAY_EXPLAIN_TERM_TITLE_H_
