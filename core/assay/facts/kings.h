// What is true around a king: shelter, opened lines, who looks at it.
#ifndef ASSAY_FACTS_KINGS_H_
#define ASSAY_FACTS_KINGS_H_

#include "assay/facts/claim_makers.h"
#include "assay/facts/facts.h"

namespace assay {

// The king's file and the files next to it, as whole files.
Bitboard KingFiles(const Facts& facts, Side side);

// Own pawns on the king's files within two ranks ahead of it.
Bitboard ShelterPawns(const Facts& facts, Side side);

// How many of the king's files have no shelter pawn.
int ShelterGaps(const Facts& facts, Side side);

// Own f-, g- and h-pawns (the king on files e to h of its first rank) or a-,
// b- and c-pawns (on a to d) that have left their start square.
Bitboard MovedFlankPawns(const Facts& facts, Side side);

// Diagonals from the king with at least two empty squares and an enemy queen
// or bishop that moves on their colour: at most four.
struct OpenDiagonals {
  OpenDiagonal diagonals[4];
  int size = 0;

  const OpenDiagonal* begin() const { return diagonals; }
  const OpenDiagonal* end() const { return diagonals + size; }
};
OpenDiagonals FindOpenDiagonals(const Facts& facts, Side side);

// Files at or next to the king that are open, or half-open for the opponent,
// as whole files; empty where the opponent has no rook or queen.
Bitboard FilesToKing(const Facts& facts, Side side);

// Enemy pieces (no pawns) that attack the king's neighbourhood.
Bitboard KingAttackers(const Facts& facts, Side side);

// Of the squares at most two king moves from the side's king, its own included.
struct AttackedZone {
  Bitboard twice;  // those that two or more of the enemy attack
  Bitboard thin;   // those that the enemy attacks and fewer than two guard
};
AttackedZone FindAttackedZone(const Facts& facts, Side side);

// Squares that hold none of the side's own pieces or pawns, from which one of
// its knights, bishops, rooks or queens that attacks the square and is not
// pinned would give check, put there on the board as it is, and where nothing
// of the enemy can take it: the enemy attacks the square not at all, or by the
// king alone while two of the side attack it.
Bitboard CheckSquares(const Facts& facts, Side side);
// Those pieces that would give check from such a square.
Bitboard CheckersFrom(const Facts& facts, Side side, Square square);

// Every square next to the king holds an own piece or pawn or is attacked.
bool IsKingShut(const Facts& facts, Side side);

// King moves from the side's king to all pawns of both sides, added up.
int KingMovesToPawns(const Facts& facts, Side side);

// No castling right; on files a to c or g to h of the first two ranks, no own
// rook between the king and the nearer edge of its rank.
bool IsCastled(const Facts& facts, Side side);

// On d, e or f of the first rank, with a castling right left or both queens
// on the board.
bool IsUncastled(const Facts& facts, Side side);

}  // namespace assay

#endif  // ASSAY_FACTS_KINGS_H_
