// When a game is over or may be drawn, by the FIDE Laws of Chess.
//
// Numbers in comments are articles of the Laws (handbook E.01; numbering from
// memory).
#ifndef ASSAY_RULES_DRAW_H_
#define ASSAY_RULES_DRAW_H_

#include <cstdint>
#include <vector>

#include "assay/rules/position.h"

namespace assay {

// The side to move is in check and has no legal move (5.1.1).
bool IsCheckmate(const Position& position);
// The side to move is not in check and has no legal move (5.2.1).
bool IsStalemate(const Position& position);

// Neither side can mate by any sequence of moves, as material (5.2.2): bare
// kings, a single knight, or bishops that all stand on squares of one colour.
bool IsInsufficientMaterial(const Position& position);

// Fifty moves by each side without capture or pawn move: a draw on claim
// (9.3). A mate on the last of them comes first.
bool IsFiftyMoveClaim(const Position& position);
// Seventy-five: the game is over (9.6.2). A mate comes first.
bool IsSeventyFiveMoveDraw(const Position& position);

// Counts how often positions occurred in one game (9.2: three times is a draw
// on claim; 9.6.1: five times ends the game).
class RepetitionCount {
 public:
  // Records a position as it arises; the first one recorded is the game's
  // first position.
  void Record(const Position& position);
  // How often the position recorded last has occurred, itself included.
  int Occurrences() const;

 private:
  std::vector<std::uint64_t> hashes_;  // since the last irreversible move
};

}  // namespace assay

#endif  // ASSAY_RULES_DRAW_H_
