// Material by kind, and the imbalances of Kaufman 1999: what a piece is worth
// depends on the pawns around it, and two bishops on the centre.
#include "assay/facts/claim_makers.h"
#include "assay/facts/levers.h"
#include "assay/facts/pieces.h"
#include "assay/terms/lead.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

constexpr int kAllPawns = 16;
// Kaufman's corrections count own pawns from five.
constexpr int kUsualPawns = 5;

int Count(const Facts& facts, Side side, PieceKind kind) {
  return PopCount(facts.Own(side, kind));
}

// An entry for the side that has more of a kind, for the surplus.
template <class Sink>
void AddKind(const Facts& facts, PieceKind kind, Tapered each, Sink& sink) {
  const Lead lead(Count(facts, Side::kWhite, kind) -
                  Count(facts, Side::kBlack, kind));
  if (lead.by == 0) return;
  sink.Add(TermId::kMaterial, lead.side, each * lead.by, [&](Details& details) {
    details.Squares(facts.Own(lead.side, kind));
    details.Add(MaterialClaim(facts, lead.side, kind));
  });
}

// Own pawns above the usual number, or below it.
int ExtraPawns(const Facts& facts, Side side) {
  return Count(facts, side, PieceKind::kPawn) - kUsualPawns;
}

// Every rook feels the own pawns: White's sum less Black's.
int PawnsAtRooks(const Facts& facts) {
  int net = 0;
  for (const Side side : kSides) {
    net += Sign(side) * Count(facts, side, PieceKind::kRook) *
           ExtraPawns(facts, side);
  }
  return net;
}

// Pawns count for the knights that a side has more of. White's view.
int PawnsAtSurplusKnights(const Facts& facts) {
  const Lead lead(Count(facts, Side::kWhite, PieceKind::kKnight) -
                  Count(facts, Side::kBlack, PieceKind::kKnight));
  return Sign(lead.side) * lead.by * ExtraPawns(facts, lead.side);
}

// One entry for the difference between the sides, `net` of them by White's
// view: equal armies say nothing.
template <class Sink>
void AddPawnCorrection(const Facts& facts, TermId term, PieceKind kind, int net,
                       Tapered weight, int pawns_per_weight, Sink& sink) {
  if (net == 0) return;
  const Tapered value = Scale(weight, net, pawns_per_weight);
  // A weight may be of the ending alone.
  const int decides = value.midgame != 0 ? value.midgame : value.endgame;
  const Side side = decides >= 0 ? Side::kWhite : Side::kBlack;
  sink.Add(term, side, value * Sign(side), [&](Details& details) {
    details.Squares(facts.Own(side, kind));
    details.Add(MaterialClaim(facts, side, kind));
    details.Add(MaterialClaim(facts, side, PieceKind::kPawn));
  });
}

// One entry for the only side with a pair of rooks.
template <class Sink>
void AddSecondRook(const Facts& facts, const Weights& weights, Sink& sink) {
  const bool white = Count(facts, Side::kWhite, PieceKind::kRook) > 1;
  const bool black = Count(facts, Side::kBlack, PieceKind::kRook) > 1;
  if (white == black) return;
  const Side side = white ? Side::kWhite : Side::kBlack;
  sink.Add(TermId::kSecondRook, side, weights.second_rook,
           [&](Details& details) {
             details.Squares(facts.Own(side, PieceKind::kRook));
             details.Add(MaterialClaim(facts, side, PieceKind::kRook));
           });
}

// Pawn breaks of a side that open the centre.
LeverMoves CentreBreaks(const Facts& facts, Side side) {
  return FindLeverMoves(facts, side, Facts::kCentreFiles);
}

template <class Sink>
void AddBishopPair(const Facts& facts, const Weights& weights, Side side,
                   Sink& sink) {
  if (!HasBishopPair(facts, side)) return;
  const int rams = PopCount(facts.CentreRams(Side::kWhite));
  const int gone =
      kAllPawns - PopCount(facts.position().Pieces(PieceKind::kPawn));
  // No more breaks than rams are worth something: they dissolve one each.
  int breaks = 0;
  for (const Side mover : kSides) {
    if (rams > 0) breaks += CentreBreaks(facts, mover).size;
  }
  const Tapered value =
      weights.bishop_pair + weights.bishop_pair_ram * rams +
      weights.bishop_pair_pawn_gone * gone +
      weights.bishop_pair_lever * (breaks < rams ? breaks : rams);
  sink.Add(TermId::kBishopPair, side, value, [&](Details& details) {
    details.Squares(facts.Own(side, PieceKind::kBishop));
    details.Add(BishopPairClaim(facts, side));
    details.Add(CentreClaim(facts));
    for (const Square pawn : Each(facts.CentreRams(Side::kWhite))) {
      details.Add(RamClaim(Side::kWhite, pawn));
    }
    if (rams == 0) return;
    for (const Side mover : kSides) {
      for (const LeverMove& move : CentreBreaks(facts, mover)) {
        details.Add(LeverMoveClaim(mover, move));
      }
    }
  });
}

}  // namespace

template <class Sink>
void AddMaterial(const Facts& facts, const Weights& weights, Sink& sink) {
  AddKind(facts, PieceKind::kPawn, weights.pawn, sink);
  AddKind(facts, PieceKind::kKnight, weights.knight, sink);
  AddKind(facts, PieceKind::kBishop, weights.bishop, sink);
  AddKind(facts, PieceKind::kRook, weights.rook, sink);
  AddKind(facts, PieceKind::kQueen, weights.queen, sink);
  AddPawnCorrection(facts, TermId::kKnightPawns, PieceKind::kKnight,
                    PawnsAtSurplusKnights(facts), weights.knight_pawns, 4,
                    sink);
  AddPawnCorrection(facts, TermId::kRookPawns, PieceKind::kRook,
                    PawnsAtRooks(facts), weights.rook_pawns, 2, sink);
  AddSecondRook(facts, weights, sink);
  for (const Side side : kSides) AddBishopPair(facts, weights, side, sink);
}

ASSAY_INSTANTIATE_THEME(AddMaterial);

}  // namespace assay
