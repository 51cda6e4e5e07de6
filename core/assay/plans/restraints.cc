// Restraint: a quiet move that takes the opponent's best plan away.
//
// The trade recommends it where the opponent has a plan worth more than one's
// own and a single cheap move ends it: a pawn that guards the square it needs,
// a piece in front of the pawn that would go. Not where the stop loses
// material, nor against plans that are stopped as it is.
#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/plans/draft.h"
#include "assay/plans/stops.h"

namespace assay {
namespace {

// Plans worth less need no stopping, and a third of the worth is what a stop is
// worth, up to a quarter of a pawn: the plan would take time, and the opponent
// has a next best one. Own reasoning.
constexpr Centipawns kLeastWorthStopping = 25;
constexpr Centipawns kMostPromise = 25;

// Only the opponent's best plans are worth a move.
constexpr std::size_t kMostPlans = 2;

struct Stop {
  Move move;
  Square where = kNoSquare;
  Centipawns score = 0;
};

// The best own move after which the plan fails though it did not before.
Stop BestStop(const Outlook& outlook, const Position& own, const Plan& plan) {
  const std::vector<Centipawns> undisturbed =
      LossesOf(own, plan.side, plan.moves);
  Stop best;
  // A plan that does not work as it is needs no stop.
  if (undisturbed.size() < plan.moves.size()) return best;
  const Centipawns hangs = HangsBefore(own);
  for (const Move move : AnswersTo(own, plan.moves, plan.targets.ToSet())) {
    if (!own.At(move.to()).empty()) continue;  // captures are no restraint
    const Position after = own.After(move);
    const Square where = FailsAt(after, plan.side, plan.moves, undisturbed);
    if (where == kNoSquare || CostOf(own, move, hangs) >= kLosingStep) continue;
    const Centipawns score =
        Sign(outlook.side) * ScoreOf(after, outlook.weights);
    if (best.move.is_null() || score > best.score) best = {move, where, score};
  }
  return best;
}

Claim Reason(const Outlook& outlook, const Position& own, const Stop& stop) {
  const Position after = own.After(stop.move);
  const Facts facts(after);
  Claim claim = ControlClaim(facts, outlook.side, stop.where);
  claim.line = WithPasses(outlook.position, outlook.side, {stop.move});
  return claim;
}

}  // namespace

void DraftRestraints(const Outlook& outlook, const std::vector<Plan>& enemy,
                     std::vector<Draft>& drafts) {
  const auto own = WithTurn(outlook.position, outlook.side);
  if (!own.has_value()) return;
  const std::size_t most = std::min(enemy.size(), kMostPlans);
  for (std::size_t i = 0; i < most; ++i) {
    const Plan& plan = enemy[i];
    if (plan.worth < kLeastWorthStopping) break;
    if (plan.standing != Standing::kInTime || plan.moves.empty()) continue;
    const Stop stop = BestStop(outlook, *own, plan);
    if (stop.move.is_null()) continue;
    Draft draft;
    draft.kind = PlanKind::kRestrain;
    draft.moves = {stop.move};
    draft.targets = {stop.where};
    draft.promise = std::min(plan.worth / 3, kMostPromise);
    draft.claims = {Reason(outlook, *own, stop)};
    drafts.push_back(std::move(draft));
  }
}

}  // namespace assay
