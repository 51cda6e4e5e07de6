// Where something stands in a lesson, in words.
#ifndef ASSAY_LESSON_PLACE_H_
#define ASSAY_LESSON_PLACE_H_

#include <cstdint>
#include <string>
#include <vector>

#include "assay/explain/catalogue.h"
#include "assay/notation/pgn_tree.h"

namespace assay {

// The moves in SAN that lead to the node, passes ("--") included.
std::vector<std::string> PathTo(const GameTree& tree, NodeIndex node);

// "after 14... Re8", "at the start"; "after 14... Rd8, in a variation".
std::string AfterText(const GameTree& tree, NodeIndex node,
                      const Catalogue& words = Catalogue::English());

// "game 2, after 14... Re8". Games count from 0 here, for readers from 1.
std::string PlaceText(std::uint32_t game, const GameTree& tree, NodeIndex node,
                      const Catalogue& words = Catalogue::English());

// The moves to the node from the start, or the last few of them after "...":
// "1. c4 e6 2. d4 d5".
std::string OrderText(const GameTree& tree, NodeIndex node);

// The two players, or the event, of a game: what a reader knows it by; empty
// where its tags say neither.
std::string GameTitle(const GameTree& tree);

}  // namespace assay

#endif  // ASSAY_LESSON_PLACE_H_
