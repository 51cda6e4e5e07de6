// What-if: the ledger's change under edits of the board, and what each piece
// and pawn contributes where it stands.
#ifndef ASSAY_EXPLAIN_WHAT_IF_H_
#define ASSAY_EXPLAIN_WHAT_IF_H_

#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "assay/explain/assayer.h"
#include "assay/explain/edits.h"
#include "assay/explain/ledger_change.h"

namespace assay {

// The score with what stands on the square minus the score without it, less
// what the material entries change by. None for kings, and none for what cannot
// be taken off without leaving the side that is not to move in check.
struct Attribution {
  Square square = kNoSquare;
  Centipawns beyond_material_cp = 0;  // White's view
};

struct WhatIf {
  explicit WhatIf(const Position& from) : position(from), after(from) {}

  Position position;
  Position after;
  Centipawns score_before_cp = 0;
  Centipawns score_after_cp = 0;
  // Largest first; they add up to the change of the score.
  std::vector<LedgerChange> changes;
  std::string summary;
  Message summary_said;
  ClaimRefs summary_claims;
  ClaimRefs summary_claims_before;
  std::vector<Attribution> attributions;  // of `position`, a1 to h8
  std::vector<Claim> claims;              // about `after`
  std::vector<Claim> claims_before;       // about `position`
};

// The errors are those of ApplyEdits. Of the options, language and audience
// count.
absl::StatusOr<WhatIf> AskWhatIf(const Assayer& assayer,
                                 const Position& position,
                                 const std::vector<std::string>& edits,
                                 const ExplainOptions& options = {});

std::vector<Attribution> Attribute(const Position& position,
                                   const Weights& weights);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_WHAT_IF_H_
