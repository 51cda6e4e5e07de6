// Mates by trying everything: the yardstick for a search's mates. No order, no
// windows, no evaluation, no memory; nothing but legal moves.
#ifndef ASSAY_TESTS_SUPPORT_PLAIN_MATES_H_
#define ASSAY_TESTS_SUPPORT_PLAIN_MATES_H_

#include "assay/rules/movegen.h"
#include "assay/rules/position.h"

namespace assay {
namespace testing_support {

inline bool IsMatedNow(const Position& position) {
  return position.InCheck() && !HasLegalMove(position);
}

inline bool MatesWithin(const Position& position, int moves);

// Whether every legal move of the side to move leaves it to be mated within
// that many moves of the other; mated now counts, stalemate does not.
inline bool IsMatedWithin(const Position& position, int moves) {
  if (moves == 0) return IsMatedNow(position);
  MoveList replies;
  LegalMoves(position, replies);
  if (replies.empty()) return position.InCheck();
  for (const Move reply : replies) {
    if (!MatesWithin(position.After(reply), moves)) return false;
  }
  return true;
}

// Whether the side to move has a move after which the other is mated within
// one move less.
inline bool MatesWithin(const Position& position, int moves) {
  if (moves <= 0) return false;
  MoveList tries;
  LegalMoves(position, tries);
  for (const Move move : tries) {
    if (IsMatedWithin(position.After(move), moves - 1)) return true;
  }
  return false;
}

// The fewest moves in which the side to move mates by force; 0 where it takes
// more than `most`. The clocks of the drawing rules are left out.
inline int ShortestMate(const Position& position, int most) {
  for (int moves = 1; moves <= most; ++moves) {
    if (MatesWithin(position, moves)) return moves;
  }
  return 0;
}

// How many first moves mate within `moves`: a sound problem has one.
inline int CountKeys(const Position& position, int moves) {
  MoveList tries;
  LegalMoves(position, tries);
  int keys = 0;
  for (const Move move : tries) {
    if (IsMatedWithin(position.After(move), moves - 1)) ++keys;
  }
  return keys;
}

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_PLAIN_MATES_H_
