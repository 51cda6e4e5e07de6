// Restraint: a quiet move that takes the opponent's best plan away.
//
// The trade recommends it where the opponent has a plan worth more than one's
// own and a single cheap move ends it: a pawn that guards the square it needs,
// a piece in front of the pawn that would go. Pawns cannot go back: their play
// is stopped before it begins (prophylaxis; Nimzowitsch, My System, 1925, from
// memory), also where it could still be answered later. Not where the stop
// loses material, nor against plans that fail by themselves.
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

// Only the opponent's best plans are worth a move, and the best with pawns.
constexpr std::size_t kMostPlans = 2;

bool IsWithPawns(PlanKind kind) {
  return kind == PlanKind::kLever || kind == PlanKind::kExpansion ||
         kind == PlanKind::kMinorityAttack || kind == PlanKind::kMajority;
}

// Whether it is worth a move to stop the plan. One with pawns that an answer
// stops may be stopped now; other plans can wait for the answer.
bool IsWorthStopping(const Plan& plan) {
  if (plan.worth < kLeastWorthStopping || plan.moves.empty()) return false;
  return plan.standing == Standing::kInTime ||
         (plan.standing == Standing::kStopped && IsWithPawns(plan.kind));
}

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
  if (plan.standing == Standing::kStopped &&
      std::any_of(undisturbed.begin(), undisturbed.end(),
                  [](Centipawns loss) { return loss >= kLosingStep; })) {
    return best;
  }
  const Centipawns hangs = HangsBefore(own);
  for (const Move move : AnswersTo(own, plan.moves, plan.targets.ToSet())) {
    if (!own.At(move.to()).empty()) continue;  // captures are no restraint
    const Position after = own.After(move);
    // Where more hangs elsewhere, the cost alone does not show it.
    if (!StandsSafely(after, move.to())) continue;
    const Square where = FailsAt(after, plan.side, plan.moves, undisturbed);
    if (where == kNoSquare || CostOf(own, move, hangs) >= kLosingStep) continue;
    const Centipawns score = outlook.Score(after);
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
  bool with_pawns = false;
  for (std::size_t i = 0; i < enemy.size(); ++i) {
    const Plan& plan = enemy[i];
    const bool is_best_with_pawns = IsWithPawns(plan.kind) && !with_pawns;
    if (i >= kMostPlans && !is_best_with_pawns) continue;
    with_pawns = with_pawns || is_best_with_pawns;
    if (!IsWorthStopping(plan)) continue;
    // The opponent would simply carry it out.
    const bool at_once =
        plan.moves.size() == 1 && outlook.position.side_to_move() == plan.side;
    if (at_once) continue;
    const Stop stop = BestStop(outlook, *own, plan);
    if (stop.move.is_null()) continue;
    Draft draft;
    draft.kind = PlanKind::kRestrain;
    draft.moves = {stop.move};
    draft.targets = {stop.where};
    draft.promise = std::min(plan.worth / 3, kMostPromise);
    // It could be answered later as well.
    if (plan.standing == Standing::kStopped) draft.promise /= 2;
    draft.claims = {Reason(outlook, *own, stop)};
    draft.prevented = {plan.kind, plan.moves, plan.targets};
    drafts.push_back(std::move(draft));
  }
}

}  // namespace assay
