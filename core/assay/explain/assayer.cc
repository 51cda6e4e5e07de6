#include "assay/explain/assayer.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

#include "assay/explain/account.h"
#include "assay/explain/cautions.h"
#include "assay/explain/if_ignored_text.h"
#include "assay/explain/plan_text.h"
#include "assay/explain/proved.h"
#include "assay/explain/structure.h"
#include "assay/explain/summary.h"
#include "assay/explain/verdict.h"
#include "assay/explain/wording.h"
#include "assay/facts/claim_lists.h"
#include "assay/plans/planner.h"
#include "assay/proof/temptations.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "assay/terms/weights_text.h"

namespace assay {
namespace {

// Leaves the first where all are light.
void KeepWorthwhile(std::size_t most, std::vector<Reason>& reasons) {
  const auto light = [](const Reason& reason) {
    return std::abs(reason.value_cp) < kLightestReason;
  };
  if (std::all_of(reasons.begin(), reasons.end(), light)) {
    most = std::min<std::size_t>(most, 1);
  } else {
    reasons.erase(std::remove_if(reasons.begin(), reasons.end(), light),
                  reasons.end());
  }
  if (reasons.size() > most) {
    reasons.erase(reasons.begin() + static_cast<std::ptrdiff_t>(most),
                  reasons.end());
  }
}

// How a budget is shared out, in thousandths: most for the verdict and for
// plans. There are three questions about threats.
constexpr std::uint64_t kVerdictShare = 280;
constexpr std::uint64_t kThreatShare = 40;
constexpr std::uint64_t kSecondShare = 33;
constexpr std::uint64_t kTemptationShare = 54;
constexpr std::uint64_t kPlansShare = 480;
constexpr std::uint64_t kPlanMoveShare = 33;
static_assert(kVerdictShare + 3 * kThreatShare + kSecondShare +
                  kTemptationShare + kPlansShare + kPlanMoveShare ==
              1000);

// Of what the mover wins, the proved score shows a third at least.
constexpr Centipawns kShownPart = 3;

// Plans that are proved beyond those that are told.
constexpr std::size_t kSparePlans = 1;

// Both sides' plans in words.
void TellPlans(const Facts& facts, const Plans& plans,
               const std::vector<Reason>& reasons, const Weights& weights,
               ClaimTable& table, Explanation& explanation) {
  for (const Side side : kSides) {
    for (const Plan& plan : plans.Of(side)) {
      ToldPlan told = TellPlan(facts, plan, weights, table);
      TellIfIgnored(facts.position(), reasons, weights, table, told);
      explanation.plans.push_back(std::move(told));
    }
  }
}

// A plan's first move is advised where search holds it to be this close to the
// best: a club player learns more from a plan than from an eighth of a pawn.
// Own reasoning.
constexpr Centipawns kAsGood = 12;

// Asks all questions of search and tells their answers.
class Prover {
 public:
  Prover(const Account& account, const Weights& weights,
         const ExplainOptions& options, Plans& plans, ClaimTable& table,
         Explanation& explanation)
      : position_(explanation.position),
        account_(account),
        weights_(weights),
        options_(options),
        plans_(plans),
        table_(table),
        explanation_(explanation) {}

  // Fills in all that is proved. Returns the reasons behind the verdict where
  // they are not those of the position but of what a line leads to; else none.
  std::vector<Reason> Run(const Facts& facts) {
    const Proof proof = Prove(position_, Share(kVerdictShare));
    const Proved proved{position_, account_.reasons, account_.score_cp,
                        weights_, proof};
    const std::vector<Move> shown =
        LeadWithProof(proved, table_, explanation_.cautions);
    if (!shown.empty()) {
      reasons_after_ = ReasonsAfter(position_, shown, weights_, table_);
    }
    explanation_.verdict =
        FindProvedVerdict(facts, proof, account_.score_cp,
                          shown.empty() ? account_.reasons : reasons_after_,
                          explanation_.cautions, table_);
    const auto threat = AddThreats(proof);
    AddTemptations(proof, threat);
    if (proof.mate_in != 0) {
      // Who mates, or is mated, needs no other plan.
      plans_ = Plans();
    } else {
      ProvePlans(position_, proof, Share(kPlansShare),
                 options_.max_plans_per_side, plans_);
    }
    TellPlans(facts, plans_, account_.reasons, weights_, table_, explanation_);
    AddAdvice(proved);
    explanation_.proof = proof;
    return std::move(reasons_after_);
  }

 private:
  Inquiry Share(std::uint64_t thousandths) const {
    const std::uint64_t nodes =
        options_.proof_nodes == 0 ? kDefaultProofNodes : options_.proof_nodes;
    return {weights_, std::max<std::uint64_t>(1, nodes * thousandths / 1000),
            options_.cancelled};
  }

  // Whether the score proved for the mover shows a good part of what it wins
  // beyond what is counted now: else the opponent has as much for it.
  bool IsKept(const Win& win) const {
    if (win.mates()) return true;
    const Centipawns more = ScoreFor(win.proof, position_.side_to_move()) -
                            Sign(position_.side_to_move()) * account_.score_cp;
    return kShownPart * more >= win.spoils->gain;
  }

  // The waiting side's threat, which is returned, and what the mover wins.
  std::optional<Win> AddThreats(const Proof& proof) {
    const Side mover = position_.side_to_move();
    const auto win = WinOf(position_, mover, proof);
    if (win.has_value() && IsKept(*win) &&
        IsForced(position_, mover, Share(kThreatShare))) {
      explanation_.threats.push_back(
          TellThreat(position_, mover, *win, table_));
    }
    auto threat = FindThreat(position_, Other(mover), Share(kThreatShare));
    if (threat.has_value() &&
        !IsForced(position_, Other(mover), Share(kThreatShare))) {
      threat.reset();
    }
    if (threat.has_value()) {
      explanation_.threats.push_back(
          TellThreat(position_, Other(mover), *threat, table_));
    }
    return threat;
  }

  void AddTemptations(const Proof& proof, const std::optional<Win>& threat) {
    for (const TemptingMove& move :
         FindTemptations(position_, proof, threat, Share(kTemptationShare))) {
      explanation_.temptations.push_back(
          TellTemptation(position_, move, table_));
    }
  }

  void AddAdvice(const Proved& proved) {
    std::optional<Proof> second;
    if (CountLegalMoves(position_) > 1 && !proved.proof.line.empty()) {
      second = Prove(position_, Share(kSecondShare), proved.proof.line.front());
    }
    explanation_.advice =
        TellAdvice(proved, second, explanation_.threats, explanation_.plans,
                   FindPlanToBegin(proved), table_);
  }

  // The first plan in time whose first move is the best or, where counting and
  // search agree, as good.
  std::optional<PlanToBegin> FindPlanToBegin(const Proved& proved) const {
    const Side mover = position_.side_to_move();
    std::optional<std::uint32_t> first;
    for (std::uint32_t i = 0; i < explanation_.plans.size(); ++i) {
      const Plan& plan = explanation_.plans[i].plan;
      if (plan.side != mover || plan.standing != Standing::kInTime) continue;
      if (plan.moves.front() == proved.proof.line.front()) {
        return PlanToBegin{i, true};
      }
      if (!first.has_value()) first = i;
    }
    if (!first.has_value() || !explanation_.verdict.quiet) return std::nullopt;
    const Proof proof =
        ProveMove(position_, explanation_.plans[*first].plan.moves.front(),
                  Share(kPlanMoveShare));
    const Centipawns less =
        ScoreFor(proved.proof, mover) - ScoreFor(proof, mover);
    if (proof.mate_in != 0 || less > kAsGood) return std::nullopt;
    return PlanToBegin{*first, false};
  }

  const Position& position_;
  const Account& account_;
  const Weights& weights_;
  const ExplainOptions& options_;
  Plans& plans_;
  ClaimTable& table_;
  Explanation& explanation_;
  std::vector<Reason> reasons_after_;
};

}  // namespace

Assayer::Assayer(const Weights& weights)
    : weights_(weights), fingerprint_(Fingerprint(weights)) {}

Centipawns Assayer::Score(const Position& position) const {
  return ScoreOf(position, weights_);
}

Explanation Assayer::Explain(const Position& position,
                             const ExplainOptions& options) const {
  Explanation explanation(position);
  const Facts facts(explanation.position);
  ClaimTable table;
  Account account = MakeAccount(facts, weights_, table);
  explanation.score_cp = account.score_cp;
  explanation.structure = DescribeStructure(facts, table);
  explanation.cautions = FindCautions(facts, table);
  const bool over = !HasLegalMove(position) || IsInsufficientMaterial(position);
  std::vector<Reason> then;
  Plans plans;
  if (!over && options.max_plans_per_side > 0) {
    // Some fall to search.
    const std::size_t spare = options.static_only ? 0 : kSparePlans;
    plans = FindPlans(facts, weights_, options.max_plans_per_side + spare);
  }
  if (options.static_only || over) {
    explanation.verdict =
        FindVerdict(facts, explanation.score_cp, account.reasons,
                    explanation.cautions, table);
    TellPlans(facts, plans, account.reasons, weights_, table, explanation);
  } else {
    then = Prover(account, weights_, options, plans, table, explanation)
               .Run(facts);
  }
  explanation.ledger = std::move(account.ledger);
  explanation.reasons = std::move(account.reasons);
  Summarise(plans.race, then, table, explanation);
  KeepWorthwhile(options.max_reasons, explanation.reasons);
  if (options.all_claims) {
    for (const Claim& claim : AllClaims(facts)) table.Add(claim);
  }
  explanation.claims = table.Take();
  PutIntoWords(Catalogue::OrEnglish(options.language, options.audience),
               explanation, options.opening);
  return explanation;
}

}  // namespace assay
