// Plans in words.
#ifndef ASSAY_EXPLAIN_PLAN_TEXT_H_
#define ASSAY_EXPLAIN_PLAN_TEXT_H_

#include <string>
#include <vector>

#include "assay/explain/claim_table.h"
#include "assay/explain/message.h"
#include "assay/plans/planner.h"

namespace assay {

struct Reason;  // explain/explanation.h, which includes this file

// One move of a plan or of a counter.
struct ToldStep {
  Move move;
  std::string san;
  SquareList route;     // of the piece from where it stands now; or empty
  std::string purpose;  // "attacks the pawn on c4"; or empty
  Message purpose_said;
  ClaimRefs claims;
};

struct ToldPlan {
  Plan plan;
  std::string title;  // "a siege of the pawn on c4"
  Message title_said;
  std::string text;
  Message said;
  Message begins;  // what its first move does: "begins the minority attack"
  std::vector<ToldStep> steps;
  std::string needs;  // with Standing::kNeeds
  Message needs_said;
  std::vector<ToldStep> counter;
  std::string counter_text;
  Message counter_said;
  ClaimRefs counter_claims;
  // The side's moves, the other passing or, where that is proved, developing.
  std::vector<Move> ignored_line;
  // What the line changes the score by, for the plan's side; see LedgerGain().
  Centipawns ignored_gain = 0;
  std::string ignored_text;
  Message ignored_said;
  ClaimRefs ignored_claims;
  ClaimRefs claims;
};

// What the side's score is better by after the line, the same side to move at
// both ends; 0 where that would leave the other in check.
Centipawns LedgerGain(const Position& position, Side side,
                      const std::vector<Move>& line, const Weights& weights);

// The plan is of the position that the facts are about. What is said is not yet
// in words (wording.h).
ToldPlan TellPlan(const Facts& facts, const Plan& plan, const Weights& weights,
                  ClaimTable& table);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_PLAN_TEXT_H_
