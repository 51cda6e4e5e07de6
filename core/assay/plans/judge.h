// What is to be thought of one plan that somebody has in mind.
#ifndef ASSAY_PLANS_JUDGE_H_
#define ASSAY_PLANS_JUDGE_H_

#include "assay/plans/draft.h"
#include "assay/proof/questions.h"

namespace assay {

// The plan that the draft makes, held against the opponent's stops of one move
// and of two, against the opponent's own plans and, where the inquiry grants
// nodes, against search: half of them for the position, half for the plan. The
// draft has moves, the side need not pass in check, and the game is not over.
//
//   const Plan plan = JudgePlan(outlook, draft, {weights, 48000});
//   plan.standing == Standing::kNeeds ? plan.needed : ...
Plan JudgePlan(const Outlook& outlook, const Draft& draft,
               const Inquiry& inquiry);

}  // namespace assay

#endif  // ASSAY_PLANS_JUDGE_H_
