// The move is compared with a pass: the opponent is to move after both, so that
// what differs is the move's doing and not the turn's. Plans are told by what
// they do, and a plan that a finder merely ranks lower is not called stopped:
// its moves are held against both positions.
#include "assay/explain/plan_changes.h"

#include <algorithm>

#include "assay/plans/appraise.h"
#include "assay/plans/draft.h"
#include "assay/plans/stops.h"

namespace assay {
namespace {

// So many plans are looked at on each side: all that a reader could be told.
constexpr std::size_t kAll = 14;
// A plan is worth telling of here, and one that keeps less than a third of its
// gain has been stopped. Own reasoning.
constexpr Centipawns kWorthTelling = 20;
constexpr int kKeptPercent = 34;

// What a plan's moves gain in a position of the opponent's turn, at most; none
// where they cannot be played or the first of them loses something.
std::optional<Centipawns> GainIn(const Facts& facts, const Weights& weights,
                                 const Plan& plan) {
  const Outlook outlook{facts.position(), facts, weights, plan.side};
  const auto own = WithTurn(facts.position(), plan.side);
  if (!own.has_value() || !PlayAlone(facts.position(), plan.side, plan.moves)) {
    return std::nullopt;
  }
  if (CostOf(*own, plan.moves.front()) >= kLosingStep) return std::nullopt;
  return GainAlone(outlook, plan.moves);
}

// The same goal by the same means.
bool IsLike(const Plan& a, const Plan& b) {
  if (a.kind != b.kind || a.moves.empty() || b.moves.empty()) return false;
  return a.moves.back() == b.moves.back() ||
         (!a.targets.empty() && a.targets.ToSet() == b.targets.ToSet());
}

const Plan* FindLike(const Plan& plan, const std::vector<Plan>& plans) {
  const auto like =
      std::find_if(plans.begin(), plans.end(),
                   [&plan](const Plan& other) { return IsLike(plan, other); });
  return like == plans.end() ? nullptr : &*like;
}

bool Works(const Plan& plan) {
  return plan.standing == Standing::kInTime || plan.standing == Standing::kSlow;
}

// Whether the plan's moves do in `there` what they do in `here`.
bool DoesAsMuch(const Plan& plan, const Facts& here, const Facts& there,
                const Weights& weights) {
  const auto gain_here = GainIn(here, weights, plan);
  const auto gain_there = GainIn(there, weights, plan);
  if (!gain_there.has_value()) return false;
  return !gain_here.has_value() || *gain_here <= 0 ||
         *gain_there * 100 >= *gain_here * kKeptPercent;
}

}  // namespace

PlanChanges FindPlanChanges(const Facts& before, Move move, const Facts& after,
                            const Weights& weights, std::size_t most) {
  PlanChanges changes;
  const Side side = before.position().side_to_move();
  const Side enemy = Other(side);
  const Plans plans_before = FindPlans(before, weights, kAll);
  const Plans plans_after = FindPlans(after, weights, kAll);
  for (const Plan& plan : plans_before.Of(side)) {
    if (changes.starts.size() == most) break;
    if (plan.moves.front() != move || plan.tempi() < 2 || !Works(plan)) {
      continue;
    }
    // What is left of it, as the position after the move has it.
    for (const Plan& rest : plans_after.Of(side)) {
      const bool goes_on = IsLike(plan, rest) &&
                           rest.moves.size() < plan.moves.size() &&
                           std::equal(rest.moves.rbegin(), rest.moves.rend(),
                                      plan.moves.rbegin());
      if (goes_on && rest.standing != Standing::kStopped) {
        changes.begun.push_back(plan);
        changes.starts.push_back(rest);
        break;
      }
    }
  }
  if (before.InCheck()) return changes;
  const Position passed = before.position().AfterPass();
  const Facts facts_passed(passed);
  const Plans plans_passed = FindPlans(facts_passed, weights, kAll);
  for (const Plan& plan : plans_before.Of(enemy)) {
    if (changes.stops.size() == most) break;
    const Plan* unhindered = FindLike(plan, plans_passed.Of(enemy));
    if (unhindered == nullptr || !Works(*unhindered) || !Works(plan) ||
        plan.kind == PlanKind::kRestrain || plan.worth < kWorthTelling) {
      continue;
    }
    const Plan* still = FindLike(plan, plans_after.Of(enemy));
    if (still != nullptr && still->standing != Standing::kStopped) continue;
    if (DoesAsMuch(plan, facts_passed, after, weights)) continue;
    changes.stops.push_back(plan);
  }
  for (const Plan& plan : plans_after.Of(enemy)) {
    if (changes.allows.size() == most) break;
    if (!Works(plan) || plan.kind == PlanKind::kRestrain ||
        plan.worth < kWorthTelling) {
      continue;
    }
    const Plan* anyway = FindLike(plan, plans_passed.Of(enemy));
    if (anyway != nullptr && anyway->standing != Standing::kStopped) continue;
    if (DoesAsMuch(plan, after, facts_passed, weights)) continue;
    changes.allows.push_back(plan);
  }
  return changes;
}

}  // namespace assay
