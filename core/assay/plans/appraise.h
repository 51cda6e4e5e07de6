// Values a draft and holds it against the opponent's cheapest answer.
#ifndef ASSAY_PLANS_APPRAISE_H_
#define ASSAY_PLANS_APPRAISE_H_

#include "assay/plans/draft.h"

namespace assay {

// The plan that the draft makes. Its standing is kStopped, kNeeds or kInTime;
// whether it is slow only the race can tell (race.h). The draft has moves, and
// the side need not pass in check.
Plan Appraise(const Outlook& outlook, const Draft& draft);

// The same in two parts. The first is cheap, for many drafts: it counts what
// hangs, a square at a time. The second is for plans that will be shown:
// captures on several squares, what has to come first, stops of two moves.
Plan AppraiseRoughly(const Outlook& outlook, const Draft& draft);
void CompleteAppraisal(const Outlook& outlook, Plan& plan);

// What a gain is worth that takes so many tempi: a tenth off for each, since
// the opponent uses them too. Own reasoning.
Centipawns Discounted(Centipawns gain, int tempi);

}  // namespace assay

#endif  // ASSAY_PLANS_APPRAISE_H_
