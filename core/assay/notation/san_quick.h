// SAN of games, read fast.
#ifndef ASSAY_NOTATION_SAN_QUICK_H_
#define ASSAY_NOTATION_SAN_QUICK_H_

#include <string_view>

#include "assay/rules/move.h"
#include "assay/rules/position.h"

namespace assay {

// The move that ParseSan() (san.h) would give for a text as the standard
// writes it; the null move for castling, for any text in another form, and
// where no legal move fits or several do: ParseSan() then has the last word.
// It looks at the pieces that could go to the square instead of at all legal
// moves, which makes a file of games several times faster to read.
Move QuickSan(const Position& position, std::string_view text);

}  // namespace assay

#endif  // ASSAY_NOTATION_SAN_QUICK_H_
