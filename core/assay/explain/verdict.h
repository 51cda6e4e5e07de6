// Who stands better, as an assessment of the PGN standard of 1994.
#ifndef ASSAY_EXPLAIN_VERDICT_H_
#define ASSAY_EXPLAIN_VERDICT_H_

#include <vector>

#include "assay/explain/explanation.h"

namespace assay {

// Scores below these, in centipawns for the better side, are equal, slight,
// moderate, decisive; from the last on, crushing. See verdict.cc for why.
inline constexpr Centipawns kSlightFrom = 30;
inline constexpr Centipawns kModerateFrom = 90;
inline constexpr Centipawns kDecisiveFrom = 220;
inline constexpr Centipawns kCrushingFrom = 500;

// The verdict of a static score and the reasons behind it. Claims are those of
// the reasons; a position that is over (mate, stalemate, dead) has its own.
// Where a caution leads, an equal position is called active, never quiet.
Verdict FindVerdict(const Facts& facts, Centipawns score_cp,
                    const std::vector<Reason>& reasons,
                    const std::vector<Caution>& cautions, ClaimTable& table);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_VERDICT_H_
