// Edits of the board: the little language of what-if questions.
//
//   f3-f2     move what stands on f3 to f2, by the rules or not
//   off-c4    take off what stands on c4
//   on-Nd5    put a piece on d5: a letter as in FEN, upper case for White
//   pass      give the move to the other side
//   swap      exchange the colours: turn the board about and the move with it
#ifndef ASSAY_EXPLAIN_EDITS_H_
#define ASSAY_EXPLAIN_EDITS_H_

#include <string>
#include <utility>
#include <vector>

#include "absl/status/statusor.h"
#include "assay/rules/position.h"

namespace assay {

inline constexpr std::size_t kMostEdits = 64;
inline constexpr std::size_t kMostEditBytes = 16;

struct Edit {
  enum class Kind { kMove, kOff, kOn, kPass, kSwap };
  Kind kind = Kind::kPass;
  Square from = kNoSquare;  // kMove
  Square to = kNoSquare;    // kMove, kOff, kOn
  Piece piece;              // what is moved, taken off or put on
};

struct Edited {
  Position position;
  std::vector<Edit> edits;
  // Pieces that stand elsewhere: from, to; not after a swap.
  std::vector<std::pair<Square, Square>> moved;
  bool swapped = false;  // the colours, in the end
};

// Makes the edits in order; castling rights without king or rook in place go,
// and so does an en passant capture. INVALID_ARGUMENT with a Problem of field
// "edits[i]" for each text that cannot be read, for the first that cannot be
// made, and for each one that leaves what is no legal position at the end.
absl::StatusOr<Edited> ApplyEdits(const Position& position,
                                  const std::vector<std::string>& texts);

// The position without what stands on the square (no king); none where that
// leaves no legal position.
absl::StatusOr<Position> Without(const Position& position, Square square);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_EDITS_H_
