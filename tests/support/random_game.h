// Random games with everything that a game tree can have, for round trips.
#ifndef ASSAY_TESTS_SUPPORT_RANDOM_GAME_H_
#define ASSAY_TESTS_SUPPORT_RANDOM_GAME_H_

#include <cstdint>

#include "assay/notation/pgn_tree.h"

namespace assay::testing_support {

// The same game for the same seed on every machine. Nodes are in the order of
// the text, as a reader numbers them.
GameTree RandomGame(std::uint64_t seed);

// A game with brace comments of plain words and NAGs 1 to 139 alone, and
// without passes and NAGs of lines' starts: for readers that know no more.
GameTree PlainRandomGame(std::uint64_t seed);

}  // namespace assay::testing_support

#endif  // ASSAY_TESTS_SUPPORT_RANDOM_GAME_H_
