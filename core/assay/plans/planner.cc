#include "assay/plans/planner.h"

#include <algorithm>

#include "assay/plans/appraise.h"
#include "assay/plans/draft.h"
#include "assay/plans/race.h"
#include "assay/plans/teachings.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

using Finder = void (*)(const Outlook&, std::vector<Draft>&);
constexpr Finder kFinders[] = {
    DraftSieges,      DraftLevers,          DraftExpansions,  DraftRegroups,
    DraftTrades,      DraftMinorityAttacks, DraftMajorities,  DraftPassers,
    DraftKingAttacks, DraftKingWalks,       DraftDevelopment, DraftFiles,
    DraftReshapes};

// A first step that loses this much to the best reply is no step.
constexpr Centipawns kLosesMaterial = 100;

// What stands in the way of a plan takes this share of its rank.
Centipawns Rank(const Plan& plan) {
  switch (plan.standing) {
    case Standing::kInTime:
      return plan.worth;
    case Standing::kSlow:
      return plan.worth * 3 / 4;
    case Standing::kNeeds:
      return plan.worth * 2 / 3;
    case Standing::kStopped:
      break;
  }
  return plan.worth / 3;
}

void SortByRank(std::vector<Plan>& plans) {
  std::stable_sort(
      plans.begin(), plans.end(),
      [](const Plan& a, const Plan& b) { return Rank(a) > Rank(b); });
}

// Plans of one kind differ little to a reader: the best alone is kept, and of
// two with the same moves or the same first move and target, the better.
bool IsRepeatOf(const Plan& plan, const Plan& better) {
  if (plan.kind == better.kind || plan.moves == better.moves) return true;
  return plan.moves.front() == better.moves.front() &&
         plan.targets.ToSet() == better.targets.ToSet();
}

void KeepBest(std::vector<Plan>& plans, std::size_t most) {
  SortByRank(plans);
  std::vector<Plan> kept;
  for (Plan& plan : plans) {
    if (kept.size() == most) break;
    if (plan.worth < kLeastWorth) continue;
    const bool repeats = std::any_of(
        kept.begin(), kept.end(),
        [&plan](const Plan& better) { return IsRepeatOf(plan, better); });
    if (!repeats) kept.push_back(std::move(plan));
  }
  plans = std::move(kept);
}

std::vector<Plan> AppraiseAll(const Outlook& outlook,
                              const std::vector<Draft>& drafts) {
  std::vector<Plan> plans;
  for (const Draft& draft : drafts) {
    if (!draft.moves.empty()) plans.push_back(Appraise(outlook, draft));
  }
  SortByRank(plans);
  return plans;
}

}  // namespace

Plans FindPlans(const Facts& facts, const Weights& weights, std::size_t most) {
  Plans plans;
  const Position& position = facts.position();
  if (!HasLegalMove(position)) return plans;
  const StructureList structures = FindStructures(facts);
  for (const Side side : kSides) {
    if (side != position.side_to_move() && facts.InCheck()) continue;
    const Outlook outlook{position, facts, weights, side};
    std::vector<Draft> drafts;
    for (const Finder find : kFinders) find(outlook, drafts);
    CreditTeachings(outlook, structures, drafts);
    plans.of[Index(side)] = AppraiseAll(outlook, drafts);
  }
  const Outlook white{position, facts, weights, Side::kWhite};
  const Outlook black{position, facts, weights, Side::kBlack};
  std::vector<Plan> restraints[2];
  for (const Outlook* outlook : {&white, &black}) {
    if (outlook->side != position.side_to_move() && facts.InCheck()) continue;
    std::vector<Draft> drafts;
    DraftRestraints(*outlook, plans.Of(outlook->enemy()), drafts);
    CreditTeachings(*outlook, structures, drafts);
    restraints[Index(outlook->side)] = AppraiseAll(*outlook, drafts);
  }
  for (const Side side : kSides) {
    std::vector<Plan>& own = plans.of[Index(side)];
    const Centipawns own_best = own.empty() ? 0 : own.front().worth;
    const std::vector<Plan>& theirs = plans.of[Index(Other(side))];
    const Centipawns their_best = theirs.empty() ? 0 : theirs.front().worth;
    for (Plan& plan : restraints[Index(side)]) {
      // The own plan comes first unless the opponent's is clearly the bigger.
      if (2 * their_best < 3 * own_best) {
        plan.worth = std::min(plan.worth, own_best - 1);
      }
      own.push_back(std::move(plan));
    }
    SortByRank(own);
  }
  Compare(white, black, plans.of[0], plans.of[1]);
  for (std::vector<Plan>& own : plans.of) KeepBest(own, most);
  return plans;
}

void ProvePlans(const Position& position, const Proof& best,
                const Inquiry& inquiry, Plans& plans) {
  const std::size_t count = plans.of[0].size() + plans.of[1].size();
  if (count == 0) return;
  Inquiry share = inquiry;
  share.nodes = inquiry.nodes / count;
  for (const Side side : kSides) {
    const bool to_move = position.side_to_move() == side;
    const Position own = to_move ? position : position.AfterPass();
    for (Plan& plan : plans.of[Index(side)]) {
      Proof proof = ProveMove(own, plan.moves.front(), share);
      const auto lost = WinOf(own, Other(side), proof);
      const bool loses =
          lost.has_value() &&
          (lost->mates() || lost->spoils->gain >= kLosesMaterial);
      // What falls anyway is not the plan's doing.
      const bool anyway =
          to_move &&
          ScoreFor(best, side) - ScoreFor(proof, side) < kLosesMaterial;
      if (loses && !anyway) {
        plan.standing = Standing::kStopped;
        plan.counter = {proof.line[1]};
        plan.counter_after_first = true;
      }
      if (!to_move) proof.line.insert(proof.line.begin(), Move());
      plan.proof = std::move(proof);
    }
    SortByRank(plans.of[Index(side)]);
  }
}

}  // namespace assay
