// Why a plan makes sense.
#ifndef ASSAY_EXPLAIN_PLAN_REASON_H_
#define ASSAY_EXPLAIN_PLAN_REASON_H_

#include "assay/explain/message.h"
#include "assay/facts/facts.h"
#include "assay/plans/plan.h"

namespace assay {

// "it is backward on the half-open c-file, and three men can attack it against
// two defenders within three moves": one or two clauses, made from the claims
// that the plan rests on, so that it says nothing that they do not; empty
// where they say nothing to a reader. The facts are of the plan's position.
Message PlanReason(const Facts& facts, const Plan& plan);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_PLAN_REASON_H_
