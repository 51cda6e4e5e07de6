// Knights and bishops: outposts, bad bishops, and which of them suits the
// centre.
#include "assay/facts/claim_makers.h"
#include "assay/facts/pieces.h"
#include "assay/facts/routes.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

// Moves that a piece is given to reach an outpost.
constexpr int kOutpostMoves = 2;

// With as many useful squares a bishop works past its own fixed pawns, and they
// cost it nothing. Measured.
constexpr int kWorkingScope = 7;

Bitboard Minors(const Facts& facts, Side side) {
  return facts.Own(side, PieceKind::kKnight) |
         facts.Own(side, PieceKind::kBishop);
}

template <class Sink>
void AddOutposts(const Facts& facts, const Weights& weights, Side side,
                 Sink& sink) {
  const Bitboard outposts = facts.Pawns(side).outposts;
  if (outposts == 0) return;
  const Bitboard knights = facts.Own(side, PieceKind::kKnight);
  for (const Square square : Each(outposts & Minors(facts, side))) {
    const bool knight = Contains(knights, square);
    const Bitboard contesting = OutpostContesters(facts, side, square);
    Tapered value = knight ? weights.knight_outpost : weights.bishop_outpost;
    if (contesting == 0) value = value + weights.outpost_uncontested;
    sink.Add(TermId::kOutpost, side, value, [&](Details& details) {
      details.Squares(Bit(square));
      details.Add(SquaresClaim(ClaimKind::kOutpost, side, Bit(square)));
      if (contesting != 0) {
        details.Add(SquaresClaim(ClaimKind::kContestable, side, Bit(square),
                                 contesting));
      }
    });
  }
  const Bitboard goals = outposts & ~facts.position().Occupied();
  if (goals == 0) return;
  for (const Square from : Each(Minors(facts, side) & ~outposts)) {
    // A bishop never comes to the other colour.
    const Bitboard colour = ColourOf(from);
    if ((goals & colour) == 0 && !Contains(knights, from)) continue;
    const Reach reach(facts, from, kOutpostMoves);
    const Bitboard reached =
        goals & (reach.NewAfter(1) | reach.NewAfter(kOutpostMoves));
    if (reached == 0) continue;
    sink.Add(TermId::kOutpostInReach, side, weights.outpost_in_reach,
             [&](Details& details) {
               details.Squares(Bit(from) | reached);
               for (const Square goal : Each(reached)) {
                 Claim claim = SquaresClaim(ClaimKind::kOutpostRoute, side, 0);
                 claim.squares = reach.RoutesTo(goal, 1).front();
                 details.Add(claim);
               }
             });
  }
}

template <class Sink>
void AddBadBishops(const Facts& facts, const Weights& weights, Side side,
                   Sink& sink) {
  for (const Square bishop : Each(facts.Own(side, PieceKind::kBishop))) {
    const Bitboard pawns = BadBishopPawns(facts, side, bishop);
    if (pawns == 0) continue;
    const int missing = kWorkingScope - PopCount(facts.Scope(side, bishop));
    if (missing <= 0) continue;
    sink.Add(TermId::kBadBishop, side,
             weights.bad_bishop * (PopCount(pawns) * missing),
             [&](Details& details) {
               details.Squares(Bit(bishop) | pawns);
               details.Add(BadBishopClaim(side, bishop, pawns));
               details.Add(ScopeClaim(facts, side, bishop));
             });
  }
}

// One side has knights where the other has bishops: rams decide whom it suits.
template <class Sink>
void AddKnightForBishop(const Facts& facts, const Weights& weights,
                        Sink& sink) {
  const auto surplus = [&](PieceKind kind) {
    return PopCount(facts.Own(Side::kWhite, kind)) -
           PopCount(facts.Own(Side::kBlack, kind));
  };
  const int knights = surplus(PieceKind::kKnight);
  const int bishops = surplus(PieceKind::kBishop);
  if (knights * bishops >= 0) return;
  const int exchanged =
      knights > 0 ? std::min(knights, -bishops) : -std::min(-knights, bishops);
  const int rams = PopCount(facts.CentreRams(Side::kWhite));
  if (rams == 1) return;
  const int net = exchanged * (rams - 1);
  const Side side = net > 0 ? Side::kWhite : Side::kBlack;
  sink.Add(TermId::kKnightForBishop, side,
           weights.knight_for_bishop_ram * (net > 0 ? net : -net),
           [&](Details& details) {
             const PieceKind kind =
                 rams > 1 ? PieceKind::kKnight : PieceKind::kBishop;
             details.Squares(facts.Own(side, kind));
             details.Add(MaterialClaim(facts, side, PieceKind::kKnight));
             details.Add(MaterialClaim(facts, side, PieceKind::kBishop));
             details.Add(CentreClaim(facts));
             for (const Square pawn : Each(facts.CentreRams(Side::kWhite))) {
               details.Add(RamClaim(Side::kWhite, pawn));
             }
           });
}

}  // namespace

template <class Sink>
void AddMinorPieces(const Facts& facts, const Weights& weights, Sink& sink) {
  for (const Side side : kSides) {
    AddOutposts(facts, weights, side, sink);
    AddBadBishops(facts, weights, side, sink);
    // A piece at home is behind its pawns because it has not moved.
    for (const Square minor :
         Each(ScreenedMinors(facts, side) & ~RelativeRankMask(side, 0))) {
      sink.Add(TermId::kScreenedMinor, side, weights.screened_minor,
               [&](Details& details) {
                 details.Squares(Bit(minor));
                 details.Add(ScreenedClaim(side, minor));
               });
    }
    const Bitboard rim =
        facts.Own(side, PieceKind::kKnight) & (kFileA | kFileH);
    for (const Square knight : Each(rim)) {
      sink.Add(
          TermId::kKnightOnRim, side, weights.knight_on_rim,
          [&](Details& details) {
            details.Squares(Bit(knight));
            details.Add(SquaresClaim(ClaimKind::kKnightRim, side, Bit(knight)));
          });
    }
  }
  AddKnightForBishop(facts, weights, sink);
}

ASSAY_INSTANTIATE_THEME(AddMinorPieces);

}  // namespace assay
