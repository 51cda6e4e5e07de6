// Legal moves: all of them, only counted, or whether there is one.
#ifndef ASSAY_RULES_MOVEGEN_H_
#define ASSAY_RULES_MOVEGEN_H_

#include <cstdint>

#include "assay/rules/move.h"
#include "assay/rules/position.h"

namespace assay {

// Adds every legal move of the side to move to the end of `moves`, in an
// order that depends on the position alone.
void LegalMoves(const Position& position, MoveList& moves);

// The same, only those that end on one of the squares: captures, where enemies
// stand there. It takes a part of the time.
void LegalMovesTo(const Position& position, Bitboard squares, MoveList& moves);

// How many legal moves there are, without listing them.
int CountLegalMoves(const Position& position);

bool HasLegalMove(const Position& position);

// Whether the move is among the legal ones.
bool IsLegal(const Position& position, Move move);

// The number of lines of legal moves of exactly `depth` plies: the customary
// count that move generators are checked by. 1 at depth 0.
std::uint64_t Perft(const Position& position, int depth);

}  // namespace assay

#endif  // ASSAY_RULES_MOVEGEN_H_
