// Positions as FEN: Forsyth-Edwards notation, as the PGN standard of 1994
// defines it in its section 16.1.
//
//   absl::StatusOr<Position> position = PositionFromFen(text);
//   std::string text = ToFen(*position);
//
// The reader takes six fields separated by spaces, or the first four alone
// (the counters are then 0 and 1), with spaces around them. It reports every
// fault at once as Problems (base/problem.h) in INVALID_ARGUMENT. An en passant
// square is accepted after any pawn's double step; the writer gives it only
// where the capture is legal.
#ifndef ASSAY_NOTATION_FEN_H_
#define ASSAY_NOTATION_FEN_H_

#include <string>
#include <string_view>

#include "absl/status/statusor.h"
#include "assay/rules/parsed_position.h"
#include "assay/rules/position.h"

namespace assay {

// Longer texts are refused unread. The longest FEN of a legal position has
// fewer than 100 bytes.
inline constexpr std::size_t kMostFenBytes = 128;

// Syntax only: says nothing of whether the position can be played from.
absl::StatusOr<ParsedPosition> ParseFen(std::string_view text);

// ParseFen, then CheckedPosition.
absl::StatusOr<Position> PositionFromFen(std::string_view text);

// All six fields.
std::string ToFen(const Position& position);

}  // namespace assay

#endif  // ASSAY_NOTATION_FEN_H_
