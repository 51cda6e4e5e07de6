// What pieces can do where they stand.
#include "assay/facts/pieces.h"

#include "assay/facts/claim_makers.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

// Squares of useful scope that are usual for a kind: means over the positions
// of the fit file, rounded. Measured.
struct UsualScope {
  PieceKind kind;
  int squares;
  Tapered Weights::*weight;
};
constexpr UsualScope kUsualScopes[] = {
    {PieceKind::kKnight, 4, &Weights::knight_scope},
    {PieceKind::kBishop, 4, &Weights::bishop_scope},
    {PieceKind::kRook, 5, &Weights::rook_scope},
    {PieceKind::kQueen, 8, &Weights::queen_scope},
};

template <class Sink>
void AddScopes(const Facts& facts, const Weights& weights, Side side,
               Sink& sink) {
  for (const UsualScope& usual : kUsualScopes) {
    for (const Square square : Each(facts.Own(side, usual.kind))) {
      const int scope = PopCount(facts.Scope(side, square));
      const Tapered value = weights.*(usual.weight) * (scope - usual.squares);
      sink.Add(TermId::kScope, side, value, [&](Details& details) {
        details.Squares(Bit(square));
        details.Add(ScopeClaim(facts, side, square));
      });
    }
  }
}

}  // namespace

template <class Sink>
void AddPieces(const Facts& facts, const Weights& weights, Sink& sink) {
  for (const Side side : kSides) {
    AddScopes(facts, weights, side, sink);
    for (const Square pawn : Each(SquareTakenPawns(facts, side))) {
      sink.Add(TermId::kKnightSquareTaken, side, weights.knight_square_taken,
               [&](Details& details) {
                 details.Squares(Bit(pawn) | Bit(NaturalKnight(side, pawn)));
                 details.Add(SquareTakenClaim(side, pawn));
               });
    }
  }
}

ASSAY_INSTANTIATE_THEME(AddPieces);

}  // namespace assay
