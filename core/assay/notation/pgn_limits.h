// The stated limits of a PGN game. A file has none: games are read one at a
// time and 10 GB need the memory of the largest game.
//
// The standard of 1994 bounds lines and tokens at 255 characters (4.3, 7);
// files in the world go beyond that in tag values and comments, so ours are
// wider. What is over a limit is a fault of its game, never of the next one.
#ifndef ASSAY_NOTATION_PGN_LIMITS_H_
#define ASSAY_NOTATION_PGN_LIMITS_H_

#include <cstddef>

namespace assay {

// Bytes of a symbol in the movetext and of a tag's name (standard, 7).
inline constexpr std::size_t kMostPgnSymbolBytes = 255;
// Bytes of a tag's value, as it is written between its quotes.
inline constexpr std::size_t kMostPgnTagValueBytes = 4096;
inline constexpr std::size_t kMostPgnTags = 256;

// Moves of all lines of a game together, and one for each line's start.
inline constexpr std::size_t kMostPgnNodes = 100'000;
// Variations in variations; the main line is at depth 0.
inline constexpr std::size_t kMostPgnDepth = 128;
// NAGs of one move. The numbers themselves go up to 255 (standard, 8.2.4).
inline constexpr std::size_t kMostPgnNags = 64;
inline constexpr int kMostPgnNag = 255;

// Bytes of one comment, and number and bytes of all of a game's.
inline constexpr std::size_t kMostPgnCommentBytes = std::size_t{1} << 20U;
inline constexpr std::size_t kMostPgnComments = 100'000;
inline constexpr std::size_t kMostPgnGameCommentBytes = std::size_t{16} << 20U;

// Faults and remarks that are told of one game; later ones are not.
inline constexpr std::size_t kMostPgnFaults = 10;
inline constexpr std::size_t kMostPgnRemarks = 10;

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_LIMITS_H_
