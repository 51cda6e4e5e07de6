// One plan under bounded search.
#ifndef ASSAY_PLANS_PROVE_PLAN_H_
#define ASSAY_PLANS_PROVE_PLAN_H_

#include "assay/plans/plan.h"
#include "assay/proof/questions.h"

namespace assay {

// A step that loses this much to the best reply is no step.
inline constexpr Centipawns kLosesMaterial = 100;

// Searches the plan's first step and, where that holds, the later ones against
// the best replies. A first step that loses material, or as much in all, makes
// the plan one that needs something first, where a preparing move mends that,
// or a stopped one, the reply named; one that loses no more than everything
// else does comes too late. `best` is the proof of the position.
void ProvePlan(const Position& position, const Proof& best,
               const Inquiry& inquiry, Plan& plan);

// Looks at the first step of a plan in time once more, with all the nodes, as
// ProvePlan does with a part. A step that is the best move, or that was
// searched to the end, is left as it is.
void ProveFirstStep(const Position& position, const Proof& best,
                    const Inquiry& inquiry, Plan& plan);

// Plays the plan, which is in time, against waiting moves and natural
// developing ones, each step searched, and sets `if_ignored` where it goes
// through, keeps its gain, and search gives its side more at the end than best
// play from both does now.
void ProveIfIgnored(const Position& position, const Proof& best,
                    const Inquiry& inquiry, Plan& plan);

}  // namespace assay

#endif  // ASSAY_PLANS_PROVE_PLAN_H_
