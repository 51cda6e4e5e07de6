// Natural moves that fail: captures, checks, developing moves and castling that
// lose to a reply which is not plain to see.
#ifndef ASSAY_PROOF_TEMPTATIONS_H_
#define ASSAY_PROOF_TEMPTATIONS_H_

#include <vector>

#include "assay/proof/questions.h"

namespace assay {

// Why a move looks natural.
enum class Appeal : std::uint8_t { kCaptures, kChecks, kDevelops, kCastles };

struct TemptingMove {
  Move move;
  Appeal appeal = Appeal::kDevelops;
  Win refutation;       // the opponent's; its line has the move first
  Centipawns loss = 0;  // against the best move; kMateScore at least for mate
};

inline constexpr std::size_t kMostTemptations = 3;

// At most three, the costliest first, each refuted in a way of its own; none is
// a good answer. `best` is the proof of the position, `threat` what the
// opponent threatens anyway: a move that merely overlooks it tempts nobody who
// was told.
std::vector<TemptingMove> FindTemptations(const Position& position,
                                          const Proof& best,
                                          const std::optional<Win>& threat,
                                          const Inquiry& inquiry);

}  // namespace assay

#endif  // ASSAY_PROOF_TEMPTATIONS_H_
