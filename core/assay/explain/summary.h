// A few sentences for a reader: the verdict, what speaks for it, what speaks
// against it, and whose plan comes first.
#ifndef ASSAY_EXPLAIN_SUMMARY_H_
#define ASSAY_EXPLAIN_SUMMARY_H_

#include <vector>

#include "assay/explain/explanation.h"
#include "assay/plans/race.h"

namespace assay {

// Fills in `summary` and `summary_claims` from the explanation's verdict,
// reasons and cautions. `then`, where not empty, are the reasons after the line
// that the leading caution shows: the balance is told of what it leads to, and
// plans, which are of the position, are left out.
void Summarise(const Race& race, const std::vector<Reason>& then,
               ClaimTable& table, Explanation& explanation);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_SUMMARY_H_
