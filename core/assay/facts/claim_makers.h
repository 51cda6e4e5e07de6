// Makes claims from facts, one function a kind, so that a kind is worded in
// one place whether a term, a sentence or the full list asks for it.
//
// Each function states what must hold; makers do not check it again. Squares
// come in the order that the kind's definition gives, else lowest first.
#ifndef ASSAY_FACTS_CLAIM_MAKERS_H_
#define ASSAY_FACTS_CLAIM_MAKERS_H_

#include "assay/facts/claim.h"
#include "assay/facts/danger.h"
#include "assay/facts/facts.h"

namespace assay {

// A claim about a side's squares alone, for kinds that need no more:
// ISOLATED, BACKWARD, PASSED, HOLE, LOOSE, KNIGHT_RIM, OUTPOST, ...
Claim SquaresClaim(ClaimKind kind, Side side, Bitboard squares);
Claim SquaresClaim(ClaimKind kind, Side side, Bitboard squares,
                   Bitboard others);

// Pawns (pawn_claims.cc).
Claim DoubledClaim(const Facts& facts, Side side, int file);
Claim LeverClaim(const Facts& facts, Side side, Square pawn);
Claim RamClaim(Side side, Square pawn);
Claim ChainBaseClaim(const Facts& facts, Side side, Square base);
Claim IslandsClaim(const Facts& facts, Side side);
Claim BlockadeClaim(Side side, Square blocker);
Claim MajorityClaim(Side side, Bitboard own, int enemies);
Claim MaterialClaim(const Facts& facts, Side side, PieceKind kind);

Claim PawnAdvanceClaim(const Facts& facts, Side side);

// One lever move of a side: a pawn's advance and what it then attacks. Without
// defaults, so that room for sixteen costs nothing.
struct LeverMove {
  Square from;
  Square to;
  Bitboard targets;
};
Claim LeverMoveClaim(Side side, const LeverMove& move);

// Files and centre (centre_claims.cc).
Claim CentreClaim(const Facts& facts);
Claim OpenFileClaim(int file);
Claim HalfOpenFileClaim(Side side, int file);
Claim SpaceClaim(const Facts& facts, Side side);
Claim ControlClaim(const Facts& facts, Side side, Square square);

// Pieces (piece_claims.cc).
Claim ScopeClaim(const Facts& facts, Side side, Square square);
Claim ScreenedClaim(Side side, Square minor);
Claim FarControlClaim(const Facts& facts, Side side);
Claim BishopPairClaim(const Facts& facts, Side side);
Claim SquareTakenClaim(Side side, Square pawn);
Claim AttackCountClaim(const Facts& facts, Side attacker, Square target);
Claim BadBishopClaim(Side side, Square bishop, Bitboard pawns);
Claim HangingClaim(Side side, Square square, int exchange_value);
Claim PinnedClaim(Side side, const Pin& pin);
Claim EarlyQueenClaim(Side side, Square queen, int chasers);
Claim UndevelopedClaim(Side side, Bitboard pieces);

// Kings (king_claims.cc).
Claim ShelterClaim(const Facts& facts, Side side);
Claim FlankPawnMovedClaim(Side side, Square pawn);
Claim FileToKingClaim(const Facts& facts, Side side, int file);
Claim KingAttackersClaim(const Facts& facts, Side side);
Claim KingZoneClaim(const Facts& facts, Side side);
Claim KingPawnsClaim(const Facts& facts, Side side);
Claim CheckSquareClaim(const Facts& facts, Side side, Square square);
Claim InCheckClaim(const Facts& facts);

// One diagonal from a king: its empty squares in order.
struct OpenDiagonal {
  SquareList squares;      // without the king
  Bitboard attackers = 0;  // enemy queens, and bishops of that colour
};
Claim DiagonalOpenClaim(const Facts& facts, Side side,
                        const OpenDiagonal& diagonal);

// Endings (ending_claims.cc).
Claim InsufficientClaim();
Claim ToMoveClaim(const Facts& facts);
// The side to move has no legal move.
Claim NoLegalMoveClaim(const Facts& facts);
// The result with best play, where there are just two kings and one pawn.
Claim ExactClaim(const Facts& facts);
Claim OppositionClaim(const Facts& facts, Side side);
Claim KingDistanceClaim(const Facts& facts, Side side, Square square);

// Endings with a name (textbook_claims.cc): each where its fact holds, for the
// side that the fact is about.
Claim KeySquaresClaim(const Facts& facts, Side side);
Claim LucenaClaim(const Facts& facts, Side side);
Claim PhilidorClaim(const Facts& facts, Side side);
Claim VancuraClaim(const Facts& facts, Side side);
Claim QueenHeldClaim(const Facts& facts, Side side);
Claim BishopHeldClaim(const Facts& facts, Side side);

// Lines (line_claims.cc).

// The line is legal and ends in mate by the side.
Claim MateInClaim(Side side, const std::vector<Move>& line);
// The line is legal; the count is what it changes the material by, in the
// side's view.
Claim LineClaim(const Position& position, Side side,
                const std::vector<Move>& line);

// Pieces and pawns of the side less the other's, by exchange values.
int MaterialBalance(const Position& position, Side side);

}  // namespace assay

#endif  // ASSAY_FACTS_CLAIM_MAKERS_H_
