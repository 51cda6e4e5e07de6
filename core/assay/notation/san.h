// Moves as text: SAN (standard algebraic notation, section 8.2.3 of the PGN
// standard of 1994) and coordinate moves such as e2e4 or e7e8q.
//
// The reader is lenient where the standard allows import to be: check and mate
// signs may be missing or wrong, castling may be written with zeros, a
// promotion without "=", marks such as "!?" may follow, more origin may be
// given than is needed, and "x" is not looked at. What it cannot read are
// Problems of field "move", all INVALID_ARGUMENT, told apart by their reason:
// "not a move", "illegal move" (no legal move fits) and "ambiguous move"
// (several fit: they are named).
#ifndef ASSAY_NOTATION_SAN_H_
#define ASSAY_NOTATION_SAN_H_

#include <string>
#include <string_view>
#include <vector>

#include "absl/status/statusor.h"
#include "assay/rules/move.h"
#include "assay/rules/position.h"

namespace assay {

// Longer texts are refused unread; the longest SAN move has 7 characters and
// at most a mark of 2 after it.
inline constexpr std::size_t kMostMoveBytes = 16;

// How a pass is written in lines.
inline constexpr std::string_view kPassText = "--";

absl::StatusOr<Move> ParseSan(const Position& position, std::string_view text);

// SAN, or else a coordinate move.
absl::StatusOr<Move> ParseMove(const Position& position, std::string_view text);

// The SAN of a legal move, with "+" or "#"; "--" for the null move.
std::string ToSan(const Position& position, Move move);

// SAN of each move of a line, the null move as a pass.
std::vector<std::string> ToSan(const Position& position,
                               const std::vector<Move>& line);

// "e2e4", "e7e8q"; castling is the king's move, "e1g1".
std::string ToCoordinates(Move move);

}  // namespace assay

#endif  // ASSAY_NOTATION_SAN_H_
