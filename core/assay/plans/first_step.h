// Whether a step loses something at once, how, and what would have to be
// played before it.
#ifndef ASSAY_PLANS_FIRST_STEP_H_
#define ASSAY_PLANS_FIRST_STEP_H_

#include <vector>

#include "assay/plans/draft.h"

namespace assay {

// A capture with which the side to move comes out ahead by at least `least`
// (exchange values) if both sides do nothing but capture from then on, each
// free to stop; null where there is none. A capture on one square may take the
// guard of another, which exchange values by themselves do not see.
Move WinningCapture(const Position& position, int least);

// The capture with which the opponent punishes the legal step of the side to
// move: what then falls would not have fallen without it. Null where the step
// loses nothing.
Move RefutationOf(const Position& own, Move step);

// Quiet moves after which, the opponent passing, the step loses nothing: they
// guard where it goes or what it leaves, step off the line of the refutation or
// into it. The best by the ledger first, at most `most`.
std::vector<Move> PreparingMoves(const Position& own, const Weights& weights,
                                 Move step, Move refutation, std::size_t most);

}  // namespace assay

#endif  // ASSAY_PLANS_FIRST_STEP_H_
