// What a move does to plans: those that it begins, those of the opponent that
// it stops, and those that it allows.
#ifndef ASSAY_EXPLAIN_PLAN_CHANGES_H_
#define ASSAY_EXPLAIN_PLAN_CHANGES_H_

#include <vector>

#include "assay/facts/facts.h"
#include "assay/plans/planner.h"

namespace assay {

struct PlanChanges {
  std::vector<Plan> begun;   // the mover's, the move first
  std::vector<Plan> starts;  // what is left of them, from the position after
  std::vector<Plan> stops;   // the opponent's, from the position before
  std::vector<Plan> allows;  // the opponent's, from the position after
};

// `before` and `after` are around the move; the mover is to move in `before`.
// At most `most` of each, best first. No search.
PlanChanges FindPlanChanges(const Facts& before, Move move, const Facts& after,
                            const Weights& weights, std::size_t most);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_PLAN_CHANGES_H_
