// What a line of moves wins: which piece or pawn falls, where, and when.
#ifndef ASSAY_PROOF_SPOILS_H_
#define ASSAY_PROOF_SPOILS_H_

#include <optional>
#include <vector>

#include "assay/rules/position.h"

namespace assay {

// The capture or promotion by which a side comes out ahead for good.
struct Spoils {
  Side winner = Side::kWhite;
  std::size_t ply = 0;  // index of the move in the line
  bool promotes = false;
  PieceKind kind = PieceKind::kNone;  // what falls; kNone: nothing but the
                                      // promotion
  Square square = kNoSquare;          // where it falls, or the pawn promotes
  Square start = kNoSquare;  // where it, or the pawn, stood before the line
  int gain = 0;  // of what is shown for the winner, by exchange values
  // The line up to here is enough to show it: what follows are even trades.
  std::size_t shown_plies = 0;
};

// A gain below this is no gain: less than a pawn.
inline constexpr int kLeastGain = 75;

// What the side wins by the legal line; none where it is not ahead by a pawn
// at the line's end.
std::optional<Spoils> FindSpoils(const Position& position,
                                 const std::vector<Move>& line, Side winner);

}  // namespace assay

#endif  // ASSAY_PROOF_SPOILS_H_
