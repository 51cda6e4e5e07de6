#include "assay/plans/race.h"

#include <algorithm>

#include "assay/plans/stops.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

// A plan that others have to reckon with. Own reasoning: two fifths of a pawn,
// and half as much again as what it races against.
constexpr Centipawns kLeastRival = 40;

// One who answers the best plan of the other side gets a third of its worth on
// top. Own reasoning.
constexpr int kCreditShare = 3;

// Half moves from now until the plan is carried out, nobody interfering.
int Plies(const Outlook& outlook, const Plan& plan) {
  const bool to_move = outlook.position.side_to_move() == outlook.side;
  return 2 * plan.tempi() - (to_move ? 1 : 0);
}

const Plan* Rival(const std::vector<Plan>& plans) {
  const Plan* best = nullptr;
  for (const Plan& plan : plans) {
    if (plan.standing != Standing::kInTime || plan.gain < kLeastRival) continue;
    if (best == nullptr || plan.gain > best->gain) best = &plan;
  }
  return best;
}

bool Answers(const Outlook& outlook, const Plan& plan, const Plan& rival) {
  const auto own = WithTurn(outlook.position, outlook.side);
  const Move first = plan.moves.front();
  if (!own.has_value() || !IsLegal(*own, first)) return false;
  if (!rival.counter.empty() && rival.counter.front() == first) return true;
  const Position after = own->After(first);
  if (after.InCheck()) return false;
  const std::vector<Centipawns> undisturbed =
      LossesOf(outlook.position, rival.side, rival.moves);
  return FailsAt(after, rival.side, rival.moves, undisturbed) != kNoSquare;
}

struct Verdict {
  bool slow = false;
  Centipawns credit = 0;
};

std::vector<Verdict> Judge(const Outlook& own, const Outlook& other,
                           const std::vector<Plan>& plans, const Plan* rival) {
  std::vector<Verdict> verdicts(plans.size());
  if (rival == nullptr) return verdicts;
  // A plan that fails as it stands is answered by everything and nothing.
  if (FailsAt(own.position, rival->side, rival->moves, {}) != kNoSquare) {
    return verdicts;
  }
  for (std::size_t i = 0; i < plans.size(); ++i) {
    const Plan& plan = plans[i];
    if (plan.standing != Standing::kInTime || plan.moves.empty()) continue;
    if (Answers(own, plan, *rival)) {
      verdicts[i].credit = rival->worth / kCreditShare;
      continue;
    }
    verdicts[i].slow = 2 * rival->gain >= 3 * plan.gain &&
                       Plies(other, *rival) + 2 <= Plies(own, plan);
  }
  return verdicts;
}

void Apply(const std::vector<Verdict>& verdicts, std::vector<Plan>& plans) {
  for (std::size_t i = 0; i < plans.size(); ++i) {
    if (verdicts[i].slow) plans[i].standing = Standing::kSlow;
    // A restraint has its worth from what it stops already.
    if (plans[i].kind != PlanKind::kRestrain) {
      plans[i].worth += verdicts[i].credit;
    }
  }
}

}  // namespace

void Compare(const Outlook& white, const Outlook& black,
             std::vector<Plan>& whites, std::vector<Plan>& blacks) {
  const auto of_white = Judge(white, black, whites, Rival(blacks));
  const auto of_black = Judge(black, white, blacks, Rival(whites));
  Apply(of_white, whites);
  Apply(of_black, blacks);
}

}  // namespace assay
