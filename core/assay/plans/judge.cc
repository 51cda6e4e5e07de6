#include "assay/plans/judge.h"

#include "assay/plans/appraise.h"
#include "assay/plans/planner.h"
#include "assay/plans/prove_plan.h"
#include "assay/plans/race.h"

namespace assay {
namespace {

// Of either side, enough to find the plan among, and what it races against.
constexpr std::size_t kMostPlans = 6;

}  // namespace

Plan JudgePlan(const Outlook& outlook, const Draft& draft,
               const Inquiry& inquiry) {
  const Position& position = outlook.position;
  Plans plans = FindPlans(outlook.facts, outlook.weights, kMostPlans);
  Draft full = draft;
  for (const Plan& plan : plans.Of(outlook.side)) {
    // What the trade makes of it the finder knows, whoever asks.
    if (plan.moves != draft.moves || draft.promise != 0) continue;
    full.kind = plan.kind;
    full.promise =
        plan.gain - GainAlone(outlook, draft.moves).value_or(plan.gain);
    break;
  }
  Plan plan = Appraise(outlook, full);
  plans.of[Index(outlook.side)] = {std::move(plan)};
  Compare({position, outlook.facts, outlook.weights, Side::kWhite},
          {position, outlook.facts, outlook.weights, Side::kBlack}, plans.of[0],
          plans.of[1]);
  plan = std::move(plans.of[Index(outlook.side)].front());
  if (inquiry.nodes == 0) return plan;
  Inquiry half = inquiry;
  half.nodes = inquiry.nodes / 2;
  const Proof best = Prove(position, half);
  ProvePlan(position, best, half, plan);
  if (plan.standing == Standing::kInTime) {
    ProveIfIgnored(position, best, half, plan);
  }
  return plan;
}

}  // namespace assay
