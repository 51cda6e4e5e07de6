// Pieces that can be taken, pinned, shut in or chased.
#ifndef ASSAY_FACTS_DANGER_H_
#define ASSAY_FACTS_DANGER_H_

#include "assay/facts/facts.h"

namespace assay {

// Pieces (no pawn, no king) of the side that nothing of its own guards.
Bitboard LoosePieces(const Facts& facts, Side side);

// Pieces and pawns of the side that can be attacked with gain are few; this
// finds those that are attacked at all, in one set operation. What hangs is
// always among them.
Bitboard AttackedPieces(const Facts& facts, Side side);

// Some of those whose exchange value is 0 for certain, found in a few set
// operations: taking costs more than it and its guard are worth together. None
// of them is trapped either.
Bitboard SafelyGuarded(const Facts& facts, Side side);

// Pieces and pawns, kings left out, that the enemy attacks, that no own pawn
// guards and at most one own piece or the king.
Bitboard ThinlyGuarded(const Facts& facts, Side side);

// One pin: the pinned piece or pawn, the enemy slider, and the piece behind,
// which is the king (absolute) or one worth more than pinned piece and slider.
struct Pin {
  Square pinned = kNoSquare;
  Square slider = kNoSquare;
  Square behind = kNoSquare;
};

// Pins on one side, on the stack: 32 is more than any game sees, and what is
// beyond is left out.
struct Pins {
  Pin pins[32];
  int size = 0;

  const Pin* begin() const { return pins; }
  const Pin* end() const { return pins + size; }
};
// Pins of pieces and pawns of the side.
Pins FindPins(const Position& position, Side side);

// Whether the piece on the square, of the side, is trapped: hanging or
// attacked by something worth less, and left hanging by each of its moves save
// captures of at least its own value.
bool IsTrapped(const Facts& facts, Square square);
// The same where the square's exchange value is known already.
bool IsTrapped(const Facts& facts, Square square, int exchange_value);

// For a queen out early (off its start square, at least two own minor pieces
// undeveloped): how many enemy pieces and pawns, queens and kings left out,
// can attack it after one legal move without hanging there. -1 where it is not
// out early, or where the opponent would have to move out of turn while its
// enemy is in check.
int EarlyQueenChasers(const Facts& facts, Side side, Square queen);

// Minor pieces of the side on squares where the initial position has one of
// their kind and colour.
Bitboard UndevelopedPieces(const Facts& facts, Side side);

}  // namespace assay

#endif  // ASSAY_FACTS_DANGER_H_
