// Values a draft and holds it against the opponent's cheapest answer.
#ifndef ASSAY_PLANS_APPRAISE_H_
#define ASSAY_PLANS_APPRAISE_H_

#include "assay/plans/draft.h"

namespace assay {

// The plan that the draft makes. Its standing is kStopped, kNeeds or kInTime;
// whether it is slow only the race can tell (race.h). The draft has moves, and
// the side need not pass in check.
Plan Appraise(const Outlook& outlook, const Draft& draft);

// What a gain is worth that takes so many tempi: a tenth off for each, since
// the opponent uses them too. Own reasoning.
Centipawns Discounted(Centipawns gain, int tempi);

}  // namespace assay

#endif  // ASSAY_PLANS_APPRAISE_H_
