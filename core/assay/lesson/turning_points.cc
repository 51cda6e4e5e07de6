// Compares each position of the main line with the last one that was at rest.
// What swings to and fro by a few centipawns is no turn: the count has to move
// by more than that as well as to another verdict.
#include "assay/lesson/turning_points.h"

#include <array>
#include <cstdlib>
#include <optional>
#include <string_view>
#include <vector>

#include "assay/explain/verdict.h"

namespace assay {
namespace {

// A shift of the count below this is none (own reasoning: about half of the
// width of a slight advantage).
constexpr Centipawns kLeastShift = 35;
// Before this ply, structures change with every move of an opening.
constexpr int kFirstPly = 10;

struct State {
  Centipawns score_cp = 0;
  Centre centre = Centre::kUnresolved;
  Message structure;
  std::array<std::optional<ToldPlan>, 2> best;
};

State StateOf(const Explanation& explanation) {
  State state;
  state.score_cp = explanation.score_cp;
  state.centre = explanation.structure.centre;
  state.structure = explanation.structure.name_said;
  for (const ToldPlan& plan : explanation.plans) {
    auto& best = state.best[Index(plan.plan.side)];
    if (!best.has_value()) best = plan;
  }
  return state;
}

bool AtRest(const Position& before, const Explanation& explanation, Move move) {
  if (explanation.position.InCheck()) return false;
  if (!before.At(move.to()).empty()) return false;
  for (const Caution& caution : explanation.cautions) {
    if (caution.leads) return false;
  }
  return true;
}

// What the score says, as a step: "equal", "slightly better for White".
Message StepClause(Centipawns score_cp) {
  constexpr std::string_view kSteps[] = {"step.equal", "step.slight",
                                         "step.clear", "step.decisive",
                                         "step.crushing"};
  const int step = VerdictStep(score_cp);
  if (step == 0) return Say("step.equal");
  return Say(kSteps[std::abs(step)], step > 0 ? Side::kWhite : Side::kBlack);
}

// A plan of the one state that the other has in another standing.
Message PlanTurn(const State& was, const State& is) {
  for (const Side side : kSides) {
    const auto& old_plan = was.best[Index(side)];
    const auto& new_plan = is.best[Index(side)];
    if (!old_plan.has_value() || !new_plan.has_value()) continue;
    if (old_plan->plan.kind != new_plan->plan.kind ||
        !(old_plan->plan.targets == new_plan->plan.targets) ||
        old_plan->plan.standing == new_plan->plan.standing) {
      continue;
    }
    if (new_plan->plan.standing == Standing::kInTime) {
      return Say("turn.in_time", side, new_plan->title_said);
    }
    if (old_plan->plan.standing == Standing::kInTime) {
      return Say("turn.too_late", side, new_plan->title_said);
    }
  }
  return {};
}

Message TurnClause(const State& was, const State& is) {
  constexpr std::string_view kCentres[] = {
      "",           "turn.open",  "turn.closed",
      "turn.fixed", "turn.tense", "turn.mobile"};
  if (was.centre != is.centre && is.centre != Centre::kUnresolved) {
    return Say(kCentres[static_cast<std::size_t>(is.centre)]);
  }
  if (was.structure != is.structure && !is.structure.empty()) {
    return Say("turn.structure", is.structure);
  }
  if (VerdictStep(was.score_cp) != VerdictStep(is.score_cp) &&
      std::abs(was.score_cp - is.score_cp) >= kLeastShift) {
    return Say("turn.count", StepClause(was.score_cp), StepClause(is.score_cp));
  }
  return PlanTurn(was, is);
}

}  // namespace

std::map<NodeIndex, std::string> TurningPoints(
    const GameTree& tree, const Assayer& assayer,
    const std::atomic<bool>* cancelled, const Catalogue& words) {
  std::map<NodeIndex, std::string> turns;
  ExplainOptions options;
  options.static_only = true;
  options.max_plans_per_side = 1;
  std::optional<State> was;
  Position at = tree.start;
  int ply = 0;
  for (const NodeIndex node : tree.MainLine()) {
    const Move move = tree.nodes[node].move;
    const Position before = at;
    at = at.AfterStep(move);
    if (++ply < kFirstPly || move.is_null()) continue;
    if (cancelled != nullptr && *cancelled) break;
    const Explanation explanation = assayer.Explain(at, options);
    if (!AtRest(before, explanation, move)) continue;
    State is = StateOf(explanation);
    const std::string text =
        was.has_value() ? words.Text(TurnClause(*was, is)) : "";
    if (!text.empty()) turns.emplace(node, text);
    if (!was.has_value() || !text.empty()) {
      was = std::move(is);
    } else {
      was->best[0] = std::move(is.best[0]);
      was->best[1] = std::move(is.best[1]);
    }
  }
  return turns;
}

}  // namespace assay
