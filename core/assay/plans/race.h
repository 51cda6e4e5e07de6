// Both sides' plans held against each other.
#ifndef ASSAY_PLANS_RACE_H_
#define ASSAY_PLANS_RACE_H_

#include <vector>

#include "assay/plans/draft.h"

namespace assay {

// Marks as slow what comes too late for a better plan of the other side, and
// gives credit to what stops that plan. Both outlooks are of one position.
void Compare(const Outlook& white, const Outlook& black,
             std::vector<Plan>& whites, std::vector<Plan>& blacks);

}  // namespace assay

#endif  // ASSAY_PLANS_RACE_H_
