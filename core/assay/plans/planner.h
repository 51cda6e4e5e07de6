// Both sides' plans: found, valued, held against the cheapest answer, compared
// as a race and, where nodes are granted, proved by search.
#ifndef ASSAY_PLANS_PLANNER_H_
#define ASSAY_PLANS_PLANNER_H_

#include <array>
#include <vector>

#include "assay/facts/facts.h"
#include "assay/plans/plan.h"
#include "assay/plans/race.h"
#include "assay/proof/questions.h"

namespace assay {

struct Plans {
  std::array<std::vector<Plan>, 2> of;  // by Index(side), best first
  Race race;                            // between the plans that are in time

  const std::vector<Plan>& Of(Side side) const { return of[Index(side)]; }
};

// Plans worth less than this are not worth a reader's time.
inline constexpr Centipawns kLeastWorth = 15;

// At most `most` plans a side. Static: no search, deterministic, cheap. None
// for a side that would need a pass in check, nor in a finished game.
Plans FindPlans(const Facts& facts, const Weights& weights, std::size_t most);

// Searches each plan (ProvePlan, prove_plan.h), then what comes of the best
// ones in time if they are ignored. `best` is the proof of the position; the
// nodes are shared out among the plans, and at most a third more is visited for
// what else has to be known. Plans are ranked and compared anew, and
// at most `most` a side are kept: those that hold and cost least.
void ProvePlans(const Position& position, const Proof& best,
                const Inquiry& inquiry, std::size_t most, Plans& plans);

}  // namespace assay

#endif  // ASSAY_PLANS_PLANNER_H_
