// Who the texts are for.
#ifndef ASSAY_EXPLAIN_AUDIENCE_H_
#define ASSAY_EXPLAIN_AUDIENCE_H_

#include <cstdint>

namespace assay {

enum class Audience : std::uint8_t {
  kNewcomer,  // the meaning of each trade word is told once; no values
  kClub,      // trade words alone
  kExpert,    // few words, with values and lines
};

}  // namespace assay

#endif  // ASSAY_EXPLAIN_AUDIENCE_H_
