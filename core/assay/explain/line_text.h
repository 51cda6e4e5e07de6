// Moves and lines as a reader sees them, and the units on the board.
#ifndef ASSAY_EXPLAIN_LINE_TEXT_H_
#define ASSAY_EXPLAIN_LINE_TEXT_H_

#include <string>
#include <vector>

#include "assay/explain/message.h"
#include "assay/rules/position.h"

namespace assay {

// "23. Rxd5", "23... Rxd5": the move with its number; "--" for a pass.
std::string NumberedMove(const Position& before, Move move);

// "23. Rxd5 exd5 24. Qxd5".
std::string LineText(const Position& position, const std::vector<Move>& line);

// "the knight on d5": what stands on the square; of several, the king last.
Message UnitOn(const Position& position, Square square);
Message UnitsOn(const Position& position, Bitboard squares);

// The first moves of the line, at least so many where it has them, up to where
// nothing is left half done: neither of the line's next two moves captures, and
// no check is unanswered.
// Empty where that takes more than `most`.
std::vector<Move> SettledPart(const Position& position,
                              const std::vector<Move>& line, std::size_t least,
                              std::size_t most);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_LINE_TEXT_H_
