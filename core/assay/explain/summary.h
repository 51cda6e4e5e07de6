// Two or three sentences for a reader: the verdict, what speaks for it, what
// speaks against it.
#ifndef ASSAY_EXPLAIN_SUMMARY_H_
#define ASSAY_EXPLAIN_SUMMARY_H_

#include "assay/explain/explanation.h"

namespace assay {

// Fills in `summary` and `summary_claims` from the explanation's verdict,
// reasons, cautions and structure.
void Summarise(Explanation& explanation);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_SUMMARY_H_
