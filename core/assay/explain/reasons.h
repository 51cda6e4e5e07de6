// From entries to reasons: what belongs together is said together.
#ifndef ASSAY_EXPLAIN_REASONS_H_
#define ASSAY_EXPLAIN_REASONS_H_

#include <vector>

#include "assay/explain/explanation.h"
#include "assay/facts/facts.h"

namespace assay {

// In centipawns: less than a tenth of a pawn is noise to a reader. The bare
// move (the tempo term) counts as noise, too.
inline constexpr Centipawns kLightestReason = 9;

// Groups all entries by what they are about, says each group in a sentence and
// ranks them (ranking.h). Groups whose entries cancel to nothing are left out,
// so the values still add up to the score. `table` has the ledger's claims;
// what the sentences name besides is added to it.
std::vector<Reason> FindReasons(const Facts& facts,
                                const std::vector<ExplainedEntry>& ledger,
                                ClaimTable& table);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_REASONS_H_
