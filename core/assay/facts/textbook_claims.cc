// Claims of the endings in textbook_endings.h.
#include "assay/facts/claim_lists.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/textbook_endings.h"

namespace assay {
namespace {

Bitboard KingOf(const Facts& facts, Side side) {
  return facts.Own(side, PieceKind::kKing);
}

// The side's king and its piece of the kind.
Bitboard KingAnd(const Facts& facts, Side side, PieceKind kind) {
  return KingOf(facts, side) | facts.Own(side, kind);
}

}  // namespace

Claim KeySquaresClaim(const Facts& facts, Side side) {
  return SquaresClaim(ClaimKind::kKeySquares, side,
                      KingAnd(facts, side, PieceKind::kPawn));
}

Claim LucenaClaim(const Facts& facts, Side side) {
  return SquaresClaim(ClaimKind::kLucena, side, facts.position().Pieces(side),
                      KingOf(facts, Other(side)));
}

Claim PhilidorClaim(const Facts& facts, Side side) {
  return SquaresClaim(ClaimKind::kPhilidor, side, facts.position().Pieces(side),
                      facts.Pawns(Other(side)).pawns);
}

Claim VancuraClaim(const Facts& facts, Side side) {
  return SquaresClaim(ClaimKind::kVancura, side, facts.position().Pieces(side),
                      facts.Pawns(Other(side)).pawns |
                          facts.Own(Other(side), PieceKind::kRook));
}

Claim QueenHeldClaim(const Facts& facts, Side side) {
  return SquaresClaim(ClaimKind::kQueenHeld, side,
                      facts.position().Pieces(side),
                      facts.Own(Other(side), PieceKind::kQueen));
}

Claim BishopHeldClaim(const Facts& facts, Side side) {
  return SquaresClaim(ClaimKind::kBishopHeld, side,
                      facts.position().Pieces(side),
                      facts.Pawns(Other(side)).pawns);
}

void AddTextbookClaims(const Facts& facts, std::vector<Claim>& claims) {
  struct Textbook {
    bool (*holds)(const Facts&, Side);
    Claim (*claim)(const Facts&, Side);
  };
  constexpr Textbook kAll[] = {
      {IsOnKeySquare, KeySquaresClaim},
      {IsLucena, LucenaClaim},
      {IsPhilidor, PhilidorClaim},
      {IsVancura, VancuraClaim},
      {HoldsQueen, QueenHeldClaim},
      {BlocksPawnOfOppositeBishop, BishopHeldClaim},
  };
  for (const Textbook& textbook : kAll) {
    for (const Side side : kSides) {
      if (textbook.holds(facts, side)) {
        claims.push_back(textbook.claim(facts, side));
      }
    }
  }
}

}  // namespace assay
