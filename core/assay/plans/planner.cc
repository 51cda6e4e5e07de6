#include "assay/plans/planner.h"

#include <algorithm>
#include <optional>

#include "assay/plans/appraise.h"
#include "assay/plans/draft.h"
#include "assay/plans/prove_plan.h"
#include "assay/plans/race.h"
#include "assay/plans/stops.h"
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

// A plan that something has to be done for first is offered from this worth
// on, and of the refused drafts so many are looked at. Own reasoning.
constexpr Centipawns kLeastNeeding = 40;
constexpr std::size_t kMostRefused = 2;

// Of the nodes that plans get, a third is for a first look at all of them, a
// part for the best that the waiting side could do, and as much a side for what
// comes of its first plan if it is ignored; the rest is for a second look
// at those that are told as being in time. Without it, twice as many of their
// first steps lose what a deeper search sees fall (bench: plan_stats).
constexpr std::uint64_t kFirstLook = 3;
constexpr std::uint64_t kBesides = 18;

// What may be spent on plans that counting already holds to fail, as a share
// of what is spent on others.
constexpr std::uint64_t kDoubtfulShare = 3;

// A plan pays for what its first move costs at once, twice: it has to be made
// good before anything is gained. Own reasoning.
Centipawns Remaining(const Plan& plan) {
  return plan.worth - 2 * plan.behind_best;
}

// What stands in the way of a plan takes its share of the rank; so does what
// search holds its first move to cost against the best one.
Centipawns Rank(const Plan& plan) {
  const Centipawns worth = Remaining(plan);
  switch (plan.standing) {
    case Standing::kInTime:
      return worth;
    case Standing::kSlow:
      return worth * 3 / 4;
    case Standing::kNeeds:
      return worth * 2 / 3;
    case Standing::kStopped:
      break;
  }
  // What the structure is known for is looked for first: why it fails here is
  // worth more of a word.
  return plan.taught == PawnStructure::kNone ? worth / 3 : worth * 2 / 5;
}

// An exchange that rids a besieged pawn of a guard, and a piece on its way to
// the square in front of the pawn, are means of the siege. A blockade that the
// structure is known for stands for itself.
bool Serves(const Plan& plan, const Position& position, Side owner,
            Square pawn) {
  const Bitboard targets = plan.targets.ToSet();
  if (plan.kind == PlanKind::kTrade) {
    return (targets & position.Attackers(owner, pawn, position.Occupied())) !=
           0;
  }
  return plan.kind == PlanKind::kRegroup &&
         plan.taught == PawnStructure::kNone &&
         (targets & Forward(owner, Bit(pawn))) != 0;
}

// Whether the trade is offered by the very moves of a blockade that the
// structure is known for: the blockade asks for nobody's consent.
bool IsOfferedBy(const Plan& trade, const Plan& blockade) {
  return trade.kind == PlanKind::kTrade &&
         blockade.kind == PlanKind::kRegroup &&
         blockade.taught != PawnStructure::kNone &&
         blockade.standing != Standing::kStopped &&
         trade.moves == blockade.moves;
}

// By rank, but that a siege comes before its means, and a known blockade before
// the trade that it offers.
void Sort(const Position& position, std::vector<Plan>& plans) {
  std::stable_sort(
      plans.begin(), plans.end(),
      [](const Plan& a, const Plan& b) { return Rank(a) > Rank(b); });
  for (auto plan = plans.begin(); plan != plans.end(); ++plan) {
    const auto trade = std::find_if(
        plans.begin(), plan,
        [&](const Plan& other) { return IsOfferedBy(other, *plan); });
    if (trade != plan) std::rotate(trade, plan, plan + 1);
    if (plan->kind != PlanKind::kSiege || plan->standing != Standing::kInTime) {
      continue;
    }
    const Side owner = Other(plan->side);
    const Square pawn = plan->targets[0];
    std::stable_partition(plans.begin(), plan + 1, [&](const Plan& other) {
      return !Serves(other, position, owner, pawn);
    });
  }
}

// Plans of one kind differ little to a reader: the best alone is kept, unless
// it is stopped and the other is not, and of two with the same moves or the
// same first move and target, the better.
bool IsRepeatOf(const Plan& plan, const Plan& better) {
  const bool works_instead = better.standing == Standing::kStopped &&
                             plan.standing != Standing::kStopped;
  if (plan.kind == better.kind && !works_instead) return true;
  if (plan.moves == better.moves) return true;
  return plan.moves.front() == better.moves.front() &&
         plan.targets.ToSet() == better.targets.ToSet();
}

// Of those that the opponent stops, what the structure is known for and the
// best of the others are worth a word: why they do not work here.
void KeepBest(const Position& position, std::size_t most,
              std::vector<Plan>& plans) {
  Sort(position, plans);
  std::vector<Plan> kept;
  bool has_stopped = false;
  for (Plan& plan : plans) {
    if (kept.size() == most) break;
    if (Remaining(plan) < kLeastWorth) continue;
    if (plan.standing == Standing::kStopped &&
        plan.taught == PawnStructure::kNone) {
      if (has_stopped) continue;
      has_stopped = true;
    }
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
    if (!draft.moves.empty()) plans.push_back(AppraiseRoughly(outlook, draft));
  }
  Sort(outlook.position, plans);
  return plans;
}

// The best refused draft that a preparing move mends, as a plan that needs
// it: all its steps are sound after it. It takes the place of the last where
// it ranks higher.
void AddNeeding(const Outlook& outlook, const std::vector<Draft>& refused,
                std::size_t most, std::vector<Plan>& plans) {
  struct Rated {
    const Draft* draft;
    Centipawns worth;
  };
  std::vector<Rated> rated;
  for (const Draft& draft : refused) {
    const auto gain = GainAlone(outlook, draft.moves);
    if (!gain.has_value()) continue;
    const Centipawns worth =
        Discounted(*gain + draft.promise, static_cast<int>(draft.moves.size()));
    if (worth >= kLeastNeeding) rated.push_back({&draft, worth});
  }
  std::stable_sort(
      rated.begin(), rated.end(),
      [](const Rated& a, const Rated& b) { return a.worth > b.worth; });
  if (rated.size() > kMostRefused) rated.resize(kMostRefused);
  for (const Rated& one : rated) {
    // Not worth the search for a preparing move if it would not be kept.
    if (plans.size() == most && 3 * Rank(plans.back()) >= 2 * one.worth) return;
    Plan plan = Appraise(outlook, *one.draft);
    if (plan.standing != Standing::kNeeds) continue;
    std::vector<Move> moves = plan.moves;
    moves.insert(moves.begin(), plan.needed);
    const std::vector<Centipawns> losses =
        LossesOf(outlook.position, plan.side, moves);
    const bool sound =
        losses.size() == moves.size() &&
        *std::max_element(losses.begin(), losses.end()) < kLosingStep;
    if (!sound) continue;
    plans.push_back(std::move(plan));
    KeepBest(outlook.position, most, plans);
    return;
  }
}

// What two searches of a quiet position differ by. Own reasoning.
constexpr Centipawns kSearchNoise = 10;

// What the waiting side would do at best with a move more is often a threat
// that the reply will parry: only what its plan costs beyond so much counts.
constexpr Centipawns kWorthOfMove = 40;

// Notes what the first move costs its side against the best one.
void NoteCost(const Proof& best, Centipawns allowed, Plan& plan) {
  if (plan.proof.line.empty()) return;
  const Centipawns less =
      ScoreFor(best, plan.side) - ScoreFor(plan.proof, plan.side);
  plan.behind_best = std::max(0, less - allowed);
}

// A plan whose first move costs this much against the best one can wait until
// that is made. Own reasoning: half a pawn.
constexpr Centipawns kUrgent = 50;

// Where something else is urgent, the plan needs that first, if it can still be
// begun after the reply. `best` starts with the plan's side to move.
void PutOff(const Position& own, const std::vector<Move>& best, Plan& plan) {
  if (plan.standing != Standing::kInTime || plan.behind_best < kUrgent ||
      plan.worth < kLeastNeeding || best.size() < 2 ||
      best.front() == plan.moves.front()) {
    return;
  }
  const Position then = own.After(best[0]).After(best[1]);
  if (!IsLegal(then, plan.moves.front())) return;
  plan.standing = Standing::kNeeds;
  plan.needed = best.front();
  plan.counter.clear();
  plan.behind_best = 0;
}

// One plan a side at most is told to need something first: the best.
void KeepOneNeeding(std::vector<Plan>& plans) {
  const auto needs = [](const Plan& plan) {
    return plan.standing == Standing::kNeeds;
  };
  const auto first = std::find_if(plans.begin(), plans.end(), needs);
  if (first == plans.end()) return;
  plans.erase(std::remove_if(first + 1, plans.end(), needs), plans.end());
}

// Adds what a side can do against the other's plans to its own.
void AddRestraints(const Position& position, const std::vector<Plan>& theirs,
                   std::vector<Plan>& restraints, std::vector<Plan>& own) {
  const Centipawns own_best = own.empty() ? 0 : own.front().worth;
  const Centipawns their_best = theirs.empty() ? 0 : theirs.front().worth;
  for (Plan& plan : restraints) {
    const auto twin = std::find_if(
        own.begin(), own.end(),
        [&plan](const Plan& other) { return other.moves == plan.moves; });
    if (twin != own.end() && plan.prevented.kind == PlanKind::kKingAttack) {
      // The king's safety is told before what the same move gains besides.
      plan.worth = std::max(plan.worth, twin->worth);
      own.erase(twin);
    } else if (2 * their_best < 3 * own_best) {
      // The own plan comes first unless the opponent's is clearly the bigger.
      plan.worth = std::min(plan.worth, own_best - 1);
    }
    own.push_back(std::move(plan));
  }
  Sort(position, own);
}

// All told plans under search. Needs an inquiry with a counter of its own.
class ProvingOfPlans {
 public:
  ProvingOfPlans(const Position& position, const Proof& best,
                 const Inquiry& inquiry, std::size_t most, Plans& plans)
      : position_(position),
        waiting_(Other(position.side_to_move())),
        best_(best),
        inquiry_(inquiry),
        most_(most),
        plans_(plans) {}

  void Run() {
    const std::uint64_t shares = SharesOfAll();
    if (shares == 0) return;
    if (!plans_.Of(waiting_).empty()) {
      best_of_waiting_ = ProveMove(position_, Move(), Part(kBesides));
    }
    LookAtAll(shares);
    LookAgain();
    const Facts facts(position_);
    const Outlook white{position_, facts, inquiry_.weights, Side::kWhite};
    const Outlook black{position_, facts, inquiry_.weights, Side::kBlack};
    plans_.race = FindRace(white, black, plans_.Of(Side::kWhite),
                           plans_.Of(Side::kBlack));
    for (const Side side : kSides) SeeIfIgnored(side);
  }

 private:
  Inquiry Part(std::uint64_t of) const {
    Inquiry part = inquiry_;
    part.nodes = inquiry_.nodes / of;
    return part;
  }

  // Those that counting holds to be in time have most to prove.
  static std::uint64_t ShareOf(const Plan& plan) {
    return plan.standing == Standing::kInTime ? kDoubtfulShare : 1;
  }

  std::uint64_t SharesOfAll() const {
    std::uint64_t shares = 0;
    for (const std::vector<Plan>& own : plans_.of) {
      for (const Plan& plan : own) shares += ShareOf(plan);
    }
    return shares;
  }

  void LookAtAll(std::uint64_t shares) {
    Inquiry look = Part(kFirstLook);
    for (const Side side : kSides) {
      std::vector<Plan>& own = plans_.of[Index(side)];
      for (Plan& plan : own) {
        look.nodes = inquiry_.nodes / kFirstLook * ShareOf(plan) / shares;
        ProvePlan(position_, best_, look, plan);
        SetAgainstBest(plan);
      }
      Order(own);
      KeepBest(position_, most_, own);
    }
  }

  void LookAgain() {
    std::uint64_t in_time = 0;
    for (const std::vector<Plan>& own : plans_.of) {
      in_time += static_cast<std::uint64_t>(std::count_if(
          own.begin(), own.end(),
          [](const Plan& plan) { return plan.standing == Standing::kInTime; }));
    }
    if (in_time == 0) return;
    const std::uint64_t kept = inquiry_.nodes / kBesides * 2;
    Inquiry look = inquiry_;
    look.nodes = (*inquiry_.left - std::min(*inquiry_.left, kept)) / in_time;
    for (std::vector<Plan>& own : plans_.of) {
      for (Plan& plan : own) {
        if (plan.standing != Standing::kInTime) continue;
        ProveFirstStep(position_, best_, look, plan);
        SetAgainstBest(plan);
      }
      Order(own);
    }
  }

  void SetAgainstBest(Plan& plan) const {
    if (plan.side == waiting_) {
      NoteCost(*best_of_waiting_, kWorthOfMove, plan);
      const std::vector<Move>& line = best_of_waiting_->line;
      PutOff(position_.AfterPass(), {line.begin() + 1, line.end()}, plan);
    } else {
      NoteCost(best_, kSearchNoise, plan);
      PutOff(position_, best_.line, plan);
    }
  }

  void Order(std::vector<Plan>& own) const {
    Sort(position_, own);
    KeepOneNeeding(own);
  }

  void SeeIfIgnored(Side side) {
    const std::optional<std::size_t> runner = plans_.race.runner[Index(side)];
    // A plan that the opponent's own overtakes is not ignored: it is outrun.
    if (!runner.has_value() || plans_.race.faster == Other(side)) return;
    ProveIfIgnored(position_, best_, Part(kBesides),
                   plans_.of[Index(side)][*runner]);
  }

  const Position& position_;
  const Side waiting_;
  const Proof& best_;
  const Inquiry inquiry_;
  const std::size_t most_;
  Plans& plans_;
  std::optional<Proof> best_of_waiting_;
};

}  // namespace

Plans FindPlans(const Facts& facts, const Weights& weights, std::size_t most) {
  Plans plans;
  if (most == 0) return plans;
  const Position& position = facts.position();
  std::vector<Draft> refused[2];
  Scores scores;
  if (!HasLegalMove(position)) return plans;
  const StructureList structures = FindStructures(facts);
  for (const Side side : kSides) {
    if (side != position.side_to_move() && facts.InCheck()) continue;
    const Outlook outlook{position, facts, weights, side, &refused[Index(side)],
                          &scores};
    std::vector<Draft> drafts;
    for (const Finder find : kFinders) find(outlook, drafts);
    CreditTeachings(outlook, structures, true, drafts);
    plans.of[Index(side)] = AppraiseAll(outlook, drafts);
  }
  const Outlook white{position, facts, weights, Side::kWhite, nullptr, &scores};
  const Outlook black{position, facts, weights, Side::kBlack, nullptr, &scores};
  std::vector<Plan> restraints[2];
  for (const Outlook* outlook : {&white, &black}) {
    if (outlook->side != position.side_to_move() && facts.InCheck()) continue;
    std::vector<Draft> drafts;
    DraftRestraints(*outlook, plans.Of(outlook->enemy()), drafts);
    CreditTeachings(*outlook, structures, false, drafts);
    restraints[Index(outlook->side)] = AppraiseAll(*outlook, drafts);
  }
  for (const Side side : kSides) {
    AddRestraints(position, plans.Of(Other(side)), restraints[Index(side)],
                  plans.of[Index(side)]);
  }
  Compare(white, black, plans.of[0], plans.of[1]);
  for (const Outlook* outlook : {&white, &black}) {
    std::vector<Plan>& own = plans.of[Index(outlook->side)];
    // One more than asked for: a closer look may put one of them back.
    KeepBest(position, most + 1, own);
    for (Plan& plan : own) CompleteAppraisal(*outlook, plan);
    KeepBest(position, most, own);
    AddNeeding(*outlook, refused[Index(outlook->side)], most, own);
    KeepOneNeeding(own);
  }
  plans.race = FindRace(white, black, plans.of[0], plans.of[1]);
  return plans;
}

void ProvePlans(const Position& position, const Proof& best,
                const Inquiry& inquiry, std::size_t most, Plans& plans) {
  std::uint64_t left = inquiry.nodes;
  Inquiry granted = inquiry;
  granted.left = &left;
  ProvingOfPlans(position, best, granted, most, plans).Run();
  if (inquiry.left != nullptr) {
    *inquiry.left -= std::min(*inquiry.left, inquiry.nodes - left);
  }
}

}  // namespace assay
