// Attackers and defenders of a square, now and after a few moves.
#ifndef ASSAY_FACTS_SIEGE_H_
#define ASSAY_FACTS_SIEGE_H_

#include "assay/facts/claim.h"
#include "assay/facts/facts.h"

namespace assay {

// A piece that can be brought to bear on a square, and in how many own moves.
struct Comer {
  Square from = kNoSquare;
  int moves = 0;
};

// At most sixteen, on the stack.
struct ComerList {
  Comer comers[16];
  int size = 0;

  const Comer* begin() const { return comers; }
  const Comer* end() const { return comers + size; }
};

// Pieces of the side that attack the square now (pawns and the king among
// them) or after at most `moves` moves of their own (knights, bishops, rooks
// and queens, by routes), the quickest first, equally quick ones by square.
// What stands on the square itself is left out.
ComerList Comers(const Facts& facts, Side side, Square target, int moves);

// The most pieces of the side that can attack the target now or after at most
// `moves` own moves in all, cheapest first; and as many of the comers.
ComerList Muster(const Facts& facts, Side side, Square target, int moves);

// Muster(...).size for one move, without the list.
int MusterCountInOneMove(const Facts& facts, Side side, Square target);

// The two counts as a claim: `side` attacks what is not its own. At most
// kMostSiegeMoves moves.
inline constexpr int kMostSiegeMoves = 6;
Claim SiegeCountClaim(const Facts& facts, Side side, Square target, int moves);

}  // namespace assay

#endif  // ASSAY_FACTS_SIEGE_H_
