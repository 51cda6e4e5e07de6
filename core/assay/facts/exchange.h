// The exchange value of a square: what capturing there gains by force.
//
// The game: the sides capture on the square in turn by legal moves, or stop.
// The side that does not own the piece there begins, after a pass if it is
// not to move. Pins, batteries and discovered checks count as on the board; a
// pawn that captures on its last rank becomes a queen; en passant is left
// out. Values are ExchangeValue()'s: 100, 325, 325, 500, 975.
#ifndef ASSAY_FACTS_EXCHANGE_H_
#define ASSAY_FACTS_EXCHANGE_H_

#include "assay/facts/facts.h"
#include "assay/rules/position.h"

namespace assay {

// What the enemy of the piece or pawn on `square` gains at best, in
// centipawns; 0 where it does best to stop at once, for an empty square, for
// a king, and where the beginning side would have to pass while in check.
int ExchangeValueOf(const Position& position, Square square);
// The same with what is already known: for many squares of one position.
int ExchangeValueOf(const Position& position, Square square,
                    const KingShields& shields);
int ExchangeValueOf(const Facts& facts, Square square);

// The most that captures of one piece or pawn of the side gain.
int MostHanging(const Position& position, Side side);

// The same with the turn handed over even where the owner is in check, and with
// what stands on `gone` (kNoSquare: nothing) off the board, its king, too: what
// would fall if the owner could not answer there.
int ExchangeValueOnceGone(const Position& position, Square square,
                          Square gone = kNoSquare);

// The same by the definition alone: legal captures on copies of the position,
// every choice of capturing piece tried. For tests; some 50 times slower.
int ExchangeValueByDefinition(const Position& position, Square square);

}  // namespace assay

#endif  // ASSAY_FACTS_EXCHANGE_H_
