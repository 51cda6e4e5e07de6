// Keeps the best drafts of one kind: what a finder offers is played, judged
// and ranked in one place.
#ifndef ASSAY_PLANS_BEST_DRAFTS_H_
#define ASSAY_PLANS_BEST_DRAFTS_H_

#include <optional>
#include <vector>

#include "assay/facts/routes.h"
#include "assay/plans/draft.h"

namespace assay {

// A range over squares, on the stack.
struct SquareSequence {
  Square squares[kSquares];
  int size = 0;

  const Square* begin() const { return squares; }
  const Square* end() const { return squares + size; }
};

// Whether the side loses nothing at once by the move: what then hangs of its
// own is no more than before, or is paid for by what the move takes. The move
// is legal, after a pass where the side is not to move.
bool FirstStepIsSound(const Outlook& outlook, Move move);

// Plays the route from where it begins on a position in which the side has the
// next move or the opponent passes first, each stop empty and safe, and adds
// its moves. The position after it; none where a step cannot be made so.
std::optional<Position> PlayRoute(const Position& position, Side side,
                                  const SquareList& route,
                                  std::vector<Move>& moves);

// Squares that pawns of the enemy could attack by one advance, not counting an
// advance to where a pawn of the other side takes it: a piece there is turned
// away at once.
Bitboard ChasedByPawns(const Facts& facts, Side enemy);

// The same without what costs the enemy something: an advance that opens its
// castled king's shelter while queens are on, or that leaves a neighbour on a
// half-open file with no pawn to guard it. A piece may go where only such a
// pawn asks it to leave.
Bitboard ChasedFreely(const Facts& facts, Side enemy);

// The squares of a set in the order that the side sees them, its own first rank
// first: both colours then choose alike among equals.
SquareSequence InOrder(Side side, Bitboard set);

// Shortest routes to the square, likewise in order; at most `most`.
std::vector<SquareList> RoutesInOrder(const Reach& reach, Side side,
                                      Square goal, std::size_t most);

class BestDrafts {
 public:
  explicit BestDrafts(const Outlook& outlook) : outlook_(outlook) {}

  // Takes the draft if its first step is sound and what it brings in all
  // (ledger and promise) is at least `least`; more than a pawn in all is taken
  // off the promise.
  void Offer(Draft draft, Centipawns least);

  // Adds the best few, the best first; of those with the same first target the
  // best, and those of two moves or more that are shorter by as many.
  void AddTo(std::vector<Draft>& drafts) const;

 private:
  static constexpr int kMost = 3;

  struct Ranked {
    Draft draft;
    double worth = 0;
  };

  const Outlook& outlook_;
  std::vector<Ranked> ranked_;
};

}  // namespace assay

#endif  // ASSAY_PLANS_BEST_DRAFTS_H_
