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

// The assessment of a draw, or what is as good as one.
inline constexpr int kDrawish = 10;

// Four steps each way: 0 equal, 1 slight, ... 4 crushing; negative for a score
// below zero.
int VerdictStep(Centipawns score_cp);

// The verdict of a score and the reasons behind it; of a mate, where the proof
// found one. Claims are those of the reasons; a position that is over (mate,
// stalemate, dead) has its own. Where a caution leads, an equal position is
// called active, never quiet.
Verdict FindVerdict(const Facts& facts, Centipawns score_cp,
                    const std::vector<Reason>& reasons,
                    const std::vector<Caution>& cautions, ClaimTable& table);

// The verdict that a proof calls for. It is quiet where the static score says
// nearly the same.
Verdict FindProvedVerdict(const Facts& facts, const Proof& proof,
                          Centipawns static_cp,
                          const std::vector<Reason>& reasons,
                          const std::vector<Caution>& cautions,
                          ClaimTable& table);

// Static and proved scores further apart than this tell different stories.
inline constexpr Centipawns kQuietWithin = 60;
inline bool AgreesWithCount(const Proof& proof, Centipawns static_cp) {
  const Centipawns apart = proof.score_cp - static_cp;
  return proof.mate_in == 0 && apart <= kQuietWithin && apart >= -kQuietWithin;
}

}  // namespace assay

#endif  // ASSAY_EXPLAIN_VERDICT_H_
