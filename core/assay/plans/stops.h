// What a step costs at once, and which answers stop a plan.
#ifndef ASSAY_PLANS_STOPS_H_
#define ASSAY_PLANS_STOPS_H_

#include <vector>

#include "assay/facts/exchange.h"
#include "assay/plans/draft.h"

namespace assay {

// What the side to move loses at once by the legal move: what then hangs of
// its own beyond what hung before, less what the move takes. Below 0 where it
// wins something.
Centipawns CostOf(const Position& position, Move move);
// The same with what hung before already counted: for many moves.
Centipawns CostOf(const Position& position, Move move, Centipawns before);
// What to count as hanging before a move: 0 in check, which has to be answered.
Centipawns HangsBefore(const Position& position);

// A cost from which a step is held to lose material: half a pawn.
inline constexpr Centipawns kLosingStep = 50;

// An answer that costs its owner more than this share of the gain is no stop,
// since the plan has got that much. Own reasoning.
inline constexpr int kPricePercent = 50;

// What captures of each step's piece gain where it lands, less what the step
// took, if the moves are played alone: one number a step. It ends before a step
// that is not legal or would need a pass in check.
std::vector<Centipawns> LossesOf(const Position& position, Side side,
                                 const std::vector<Move>& moves);

// The first square at which the side's moves fail if they are played alone
// from here: a step that is not legal, or whose piece is lost where it lands
// and was not in the `undisturbed` losses, those of the plan without the
// answer (one number a step; steps beyond them are held to lose nothing).
// kNoSquare where all work.
Square FailsAt(const Position& position, Side side,
               const std::vector<Move>& moves,
               const std::vector<Centipawns>& undisturbed);

// The moves of the side to move that could bear on the plan of the other side:
// captures of its men, moves onto its squares or that attack them. Checks are
// left out unless they capture: they only delay.
std::vector<Move> AnswersTo(const Position& position,
                            const std::vector<Move>& plan, Bitboard targets);

// Whether a move that takes nothing can stop such a plan. A piece that is kept
// from one square develops to another.
constexpr bool YieldsToQuietMoves(PlanKind kind) {
  return kind != PlanKind::kDevelop;
}

// Whether the piece of a one-piece plan still gets to its last square after
// the answer, one move longer at most.
bool HasSecondWay(const Position& after, Side side,
                  const std::vector<Move>& rest);

}  // namespace assay

#endif  // ASSAY_PLANS_STOPS_H_
