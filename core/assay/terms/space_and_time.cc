// Space, the centre, development and the move.
#include "assay/facts/claim_makers.h"
#include "assay/facts/pieces.h"
#include "assay/terms/lead.h"
#include "assay/terms/openness.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

constexpr int kAllMinorPieces = 8;

// One entry for the side with more room: the fewer minor pieces are left to
// share it, the less it is worth.
template <class Sink>
void AddSpace(const Facts& facts, const Weights& weights, Sink& sink) {
  const Lead lead(PopCount(facts.Space(Side::kWhite)) -
                  PopCount(facts.Space(Side::kBlack)));
  if (lead.by == 0) return;
  const int minors = PopCount(facts.position().Pieces(PieceKind::kKnight) |
                              facts.position().Pieces(PieceKind::kBishop));
  sink.Add(TermId::kSpace, lead.side,
           Scale(weights.space, lead.by * minors, kAllMinorPieces),
           [&](Details& details) {
             details.Squares(facts.Space(lead.side));
             details.Add(SpaceClaim(facts, lead.side));
           });
}

constexpr Bitboard kCentreSquares = Bit(kD4) | Bit(kE4) | Bit(kD5) | Bit(kE5);

// How often the side's pieces and pawns look at the four centre squares.
int CentreAttacks(const Facts& facts, Side side) {
  const PawnFacts& pawns = facts.Pawns(side);
  int attacks = PopCount(pawns.attacks & kCentreSquares) +
                PopCount(pawns.attacked_twice & kCentreSquares);
  for (const Square square :
       Each(facts.position().Pieces(side) & ~pawns.pawns)) {
    attacks += PopCount(facts.Attacks(square) & kCentreSquares);
  }
  return attacks;
}

// One entry for the side that looks at the centre more often.
template <class Sink>
void AddCentreControl(const Facts& facts, const Weights& weights, Sink& sink) {
  const Lead lead(CentreAttacks(facts, Side::kWhite) -
                  CentreAttacks(facts, Side::kBlack));
  if (lead.by == 0) return;
  sink.Add(TermId::kCentreControl, lead.side, weights.centre_control * lead.by,
           [&](Details& details) {
             details.Squares(kCentreSquares);
             for (const Square square : Each(kCentreSquares)) {
               details.Add(ControlClaim(facts, lead.side, square));
             }
           });
}

// One entry for the side that attacks more of the other's half, where there are
// pieces to use it.
template <class Sink>
void AddFarControl(const Facts& facts, const Weights& weights, Sink& sink) {
  const Position& position = facts.position();
  const Bitboard bare =
      position.Pieces(PieceKind::kPawn) | position.Pieces(PieceKind::kKing);
  if (position.Occupied() == bare) return;
  const Lead lead(PopCount(FarControl(facts, Side::kWhite)) -
                  PopCount(FarControl(facts, Side::kBlack)));
  if (lead.by == 0) return;
  sink.Add(TermId::kFarControl, lead.side, weights.far_control * lead.by,
           [&](Details& details) {
             details.Squares(FarControl(facts, lead.side));
             details.Add(FarControlClaim(facts, lead.side));
           });
}

template <class Sink>
void AddDevelopment(const Facts& facts, const Weights& weights, Side side,
                    Sink& sink) {
  const Bitboard at_home = UndevelopedPieces(facts, side);
  if (at_home == 0) return;
  sink.Add(TermId::kUndeveloped, side,
           Scale(weights.undeveloped * PopCount(at_home),
                 Openness(facts.centre()), kFullOpenness),
           [&](Details& details) {
             details.Squares(at_home);
             details.Add(UndevelopedClaim(side, at_home));
             details.Add(CentreClaim(facts));
           });
}

}  // namespace

template <class Sink>
void AddSpaceAndTime(const Facts& facts, const Weights& weights, Sink& sink) {
  AddSpace(facts, weights, sink);
  AddCentreControl(facts, weights, sink);
  AddFarControl(facts, weights, sink);
  for (const Side side : kSides) AddDevelopment(facts, weights, side, sink);
  sink.Add(TermId::kTempo, facts.position().side_to_move(), weights.tempo,
           [&](Details& details) { details.Add(ToMoveClaim(facts)); });
}

ASSAY_INSTANTIATE_THEME(AddSpaceAndTime);

}  // namespace assay
