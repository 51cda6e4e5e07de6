// What is counted over a line (material, moves to mate) is counted anew: the
// longer line starts elsewhere.
#include "assay/explain/claim_shift.h"

#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

int MovesOf(const Position& position, Side side,
            const std::vector<Move>& line) {
  const bool first = position.side_to_move() == side;
  return static_cast<int>(line.size() + (first ? 1 : 0)) / 2;
}

}  // namespace

Claim ShiftedClaim(const Position& position, const std::vector<Move>& line,
                   Claim claim) {
  claim.line.insert(claim.line.begin(), line.begin(), line.end());
  switch (claim.kind) {
    case ClaimKind::kLine:
    case ClaimKind::kBestReply:
      claim.count = LineClaim(position, claim.side, claim.line).count;
      break;
    case ClaimKind::kMateIn:
    case ClaimKind::kBackRank:
      claim.count = MovesOf(position, claim.side, claim.line);
      break;
    default:
      break;
  }
  return claim;
}

ClaimRefs ClaimShift::operator()(const ClaimRefs& refs) const {
  ClaimRefs shifted;
  for (const std::uint32_t ref : refs) {
    to.Add(ShiftedClaim(position, line, from.claims()[ref]), shifted);
  }
  return shifted;
}

void ClaimShift::Apply(ToldPlan& plan) const {
  for (std::vector<ToldStep>* steps : {&plan.steps, &plan.counter}) {
    for (ToldStep& step : *steps) step.claims = (*this)(step.claims);
  }
  plan.claims = (*this)(plan.claims);
  plan.counter_claims = (*this)(plan.counter_claims);
  plan.ignored_claims = (*this)(plan.ignored_claims);
}

}  // namespace assay
