// The ideas that a move shows: fork, skewer, discovered attack, pin that wins,
// overloaded guard, back rank.
//
// Each is a claim of the side that made the move, true in the position after
// it; the line up to and including the move is the caller's to add.
#ifndef ASSAY_FACTS_IDEAS_H_
#define ASSAY_FACTS_IDEAS_H_

#include <vector>

#include "assay/facts/claim.h"
#include "assay/rules/position.h"

namespace assay {

// What would fall on the square if the turn were handed over: the king, or
// what has an exchange value above 0.
bool IsPrey(const Position& position, Square square);

// FORK, SKEWER, DISCOVERED, PIN_WINS and OVERLOADED claims that hold after the
// legal move, in this order.
std::vector<Claim> IdeasShownBy(const Position& before, Move move);

// OVERLOADED claims against the other side's pieces, as the position stands.
void AddOverloaded(const Position& position, Side side,
                   std::vector<Claim>& claims);

// Whether a rook or queen mates along the king's own first rank, the king
// standing behind at least one own pawn and all other squares ahead of it
// attacked: a mate that BACK_RANK describes and that the trade calls so (by the
// definition alone, a knight or a queen from the front could give it).
bool IsBackRankMate(const Position& mated);

}  // namespace assay

#endif  // ASSAY_FACTS_IDEAS_H_
