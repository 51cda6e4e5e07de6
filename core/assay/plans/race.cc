#include "assay/plans/race.h"

#include <algorithm>

#include "assay/facts/claim_makers.h"
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

// To stop the other's plan is no plan to race with.
const Plan* Rival(const std::vector<Plan>& plans) {
  const Plan* best = nullptr;
  for (const Plan& plan : plans) {
    if (plan.kind == PlanKind::kRestrain) continue;
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

// Less material than this is not worth a word about compensation: a pawn.
constexpr int kLeastDeficit = 100;

std::optional<std::size_t> PlaceOf(const std::vector<Plan>& plans,
                                   const Plan* plan) {
  if (plan == nullptr) return std::nullopt;
  return static_cast<std::size_t>(plan - plans.data());
}

// A plan that is overtaken by one that is half as big again comes second.
bool Outruns(const Plan& plan, int plies, const Plan& other, int other_plies) {
  return plies < other_plies && 2 * plan.gain >= 3 * other.gain;
}

// A move of the side to move that stops the rival: its own plan's, one that
// was found as the rival's stop, or a restraint.
Move StopAmong(const Outlook& outlook, const std::vector<Plan>& plans,
               const Plan& rival) {
  for (const Plan& plan : plans) {
    if (plan.standing != Standing::kInTime) continue;
    if (Answers(outlook, plan, rival)) return plan.moves.front();
  }
  if (rival.counter_from == 0 && rival.counter.size() == 1) {
    return rival.counter.front();
  }
  return Move();
}

void FindStart(const Outlook& mover, const std::vector<Plan>& plans,
               const Plan* own, const Plan* rival, Race& race) {
  if (rival == nullptr) {
    if (own == nullptr) return;
    race.start = Start::kOwnPlan;
    race.first = own->moves.front();
    return;
  }
  const int own_plies = race.plies[Index(mover.side)];
  const int rival_plies = race.plies[Index(mover.enemy())];
  const bool behind =
      own == nullptr || Outruns(*rival, rival_plies, *own, own_plies);
  if (own != nullptr && Answers(mover, *own, *rival)) {
    race.start = Start::kBoth;
    race.first = own->moves.front();
    return;
  }
  const Move stop = behind ? StopAmong(mover, plans, *rival) : Move();
  if (!stop.is_null()) {
    race.start = Start::kStopping;
    race.first = stop;
  } else if (own != nullptr) {
    race.start = Start::kOwnPlan;
    race.first = own->moves.front();
  }
}

}  // namespace

Race FindRace(const Outlook& white, const Outlook& black,
              const std::vector<Plan>& whites,
              const std::vector<Plan>& blacks) {
  Race race;
  const Outlook* outlooks[] = {&white, &black};
  const std::vector<Plan>* plans[] = {&whites, &blacks};
  const Plan* runners[] = {Rival(whites), Rival(blacks)};
  for (const Side side : kSides) {
    const int i = Index(side);
    race.runner[i] = PlaceOf(*plans[i], runners[i]);
    if (runners[i] != nullptr) {
      race.plies[i] = Plies(*outlooks[i], *runners[i]);
    }
  }
  for (const Side side : kSides) {
    const int i = Index(side);
    const int j = Index(Other(side));
    if (runners[i] == nullptr) continue;
    if (runners[j] == nullptr || race.plies[i] < race.plies[j]) {
      race.faster = side;
    }
    const bool behind = MaterialBalance(white.position, side) <= -kLeastDeficit;
    const bool overtaken =
        runners[j] != nullptr &&
        Outruns(*runners[j], race.plies[j], *runners[i], race.plies[i]);
    if (behind && !overtaken) race.compensated = side;
  }
  const int mover = Index(white.position.side_to_move());
  FindStart(*outlooks[mover], *plans[mover], runners[mover], runners[1 - mover],
            race);
  return race;
}

void Compare(const Outlook& white, const Outlook& black,
             std::vector<Plan>& whites, std::vector<Plan>& blacks) {
  const auto of_white = Judge(white, black, whites, Rival(blacks));
  const auto of_black = Judge(black, white, blacks, Rival(whites));
  Apply(of_white, whites);
  Apply(of_black, blacks);
}

}  // namespace assay
