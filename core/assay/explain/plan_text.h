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
  std::string ignored_text;
  Message ignored_said;
  ClaimRefs ignored_claims;
  ClaimRefs claims;
};

// The plan is of the position that the facts are about. What is said is not yet
// in words (wording.h).
ToldPlan TellPlan(const Facts& facts, const Plan& plan, ClaimTable& table);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_PLAN_TEXT_H_
