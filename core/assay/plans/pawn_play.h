// What the finders of pawn plans share.
#ifndef ASSAY_PLANS_PAWN_PLAY_H_
#define ASSAY_PLANS_PAWN_PLAY_H_

#include <cstdint>
#include <vector>

#include "assay/plans/draft.h"

namespace assay {

// The capture on the square by the side to move with what is worth least;
// null where there is none. A promotion is to a queen.
Move CheapestCapture(const Position& position, Square square);

// The score for the outlook's side, as if it were the turn of the side that
// is to move in the outlook: what can be compared without counting the tempo.
Centipawns ScoreAt(const Outlook& outlook, const Position& position);

// Whether the moves lose nothing at once: after each of them, what moved is
// lost for no more than it took, and the first leaves nothing of the side
// hanging for more than hung before, what it took added.
bool AreSound(const Outlook& outlook, const std::vector<Move>& moves);

// Whether the pawn's advance would take it from before its own castled king
// while the enemy queen is there to use it.
bool UncoversKing(const Outlook& outlook, Square pawn);

// Whether both are on one wing: files a to c, or f to h.
bool OnSameWing(Square a, Square b);

// With a locked centre: whether the square is on the wing where the side's
// chain points, as a pawn on e5 before one on d4 points to the king's wing.
bool ChainPointsTo(const Outlook& outlook, Square square);

// The best few drafts of one kind.
class Shortlist {
 public:
  explicit Shortlist(std::size_t most) : most_(most) {}

  // Keeps the draft if its moves are sound and it is among the best. `value`
  // is what the plan is held to be worth in all, a tempo not yet discounted;
  // the promise is set to what the ledger does not see of it.
  void Offer(const Outlook& outlook, Draft draft, Centipawns value);

  void MoveTo(std::vector<Draft>& drafts);

 private:
  struct Rated {
    Centipawns worth = 0;
    std::uint64_t order = 0;  // among equals, the same for both sides
    Draft draft;
  };

  std::size_t most_;
  std::vector<Rated> rated_;  // the best first
};

}  // namespace assay

#endif  // ASSAY_PLANS_PAWN_PLAY_H_
