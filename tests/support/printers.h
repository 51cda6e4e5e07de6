// How GoogleTest shows our values, and short ways to make them in tests.
#ifndef ASSAY_TESTS_SUPPORT_PRINTERS_H_
#define ASSAY_TESTS_SUPPORT_PRINTERS_H_

#include <iosfwd>
#include <string_view>

#include "assay/base/problem.h"
#include "assay/base/square.h"
#include "assay/rules/move.h"
#include "assay/rules/position.h"

namespace assay {

// Found by argument-dependent look-up: a failed test shows a board.
void PrintTo(Square square, std::ostream* out);
void PrintTo(Side side, std::ostream* out);
void PrintTo(Move move, std::ostream* out);
void PrintTo(const Position& position, std::ostream* out);
void PrintTo(const Problem& problem, std::ostream* out);

namespace testing_support {

// The position of a FEN that must be sound; ends the test program otherwise.
Position FromFen(std::string_view fen);

// The move of a text that must be legal; ends the test program otherwise.
Move MoveOf(const Position& position, std::string_view text);

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_PRINTERS_H_
