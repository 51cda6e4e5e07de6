// Claims of a position told as claims of an earlier one: each then holds after
// the moves that lead from the one to the other.
#ifndef ASSAY_EXPLAIN_CLAIM_SHIFT_H_
#define ASSAY_EXPLAIN_CLAIM_SHIFT_H_

#include <vector>

#include "assay/explain/claim_table.h"
#include "assay/explain/plan_text.h"
#include "assay/rules/position.h"

namespace assay {

// `position` is the earlier one, `line` leads from it to the claim's own.
Claim ShiftedClaim(const Position& position, const std::vector<Move>& line,
                   Claim claim);

// The claims of one position on their way into another's table.
struct ClaimShift {
  const Position& position;  // the earlier one
  const std::vector<Move>& line;
  const ClaimTable& from;
  ClaimTable& to;

  ClaimRefs operator()(const ClaimRefs& refs) const;
  void Apply(ToldPlan& plan) const;
};

}  // namespace assay

#endif  // ASSAY_EXPLAIN_CLAIM_SHIFT_H_
