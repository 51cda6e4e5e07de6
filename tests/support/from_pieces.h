// Positions by their pieces, as books list them.
#ifndef ASSAY_TESTS_SUPPORT_FROM_PIECES_H_
#define ASSAY_TESTS_SUPPORT_FROM_PIECES_H_

#include <string_view>

#include "assay/rules/position.h"

namespace assay {
namespace testing_support {

// The position of "Kg1 Nf3 a2 b2 v Kg8 a7": White's pieces, then Black's;
// White is to move unless the text ends in ", Black to move". No castling
// rights. A text with a slash is read as a FEN. Ends the test program where
// the text makes no position.
Position FromPieces(std::string_view text);

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_FROM_PIECES_H_
