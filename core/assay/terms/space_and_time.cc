// Space, and the move.
#include <cstdlib>

#include "assay/facts/claim_makers.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

constexpr int kAllMinorPieces = 8;

// One entry for the side with more room: the fewer minor pieces are left to
// share it, the less it is worth.
template <class Sink>
void AddSpace(const Facts& facts, const Weights& weights, Sink& sink) {
  const int difference =
      PopCount(facts.Space(Side::kWhite)) - PopCount(facts.Space(Side::kBlack));
  if (difference == 0) return;
  const Side side = difference > 0 ? Side::kWhite : Side::kBlack;
  const int minors = PopCount(facts.position().Pieces(PieceKind::kKnight) |
                              facts.position().Pieces(PieceKind::kBishop));
  sink.Add(TermId::kSpace, side,
           Scale(weights.space, std::abs(difference) * minors, kAllMinorPieces),
           [&](Details& details) {
             details.Squares(facts.Space(side));
             details.Add(SpaceClaim(facts, side));
           });
}

}  // namespace

template <class Sink>
void AddSpaceAndTime(const Facts& facts, const Weights& weights, Sink& sink) {
  AddSpace(facts, weights, sink);
  sink.Add(TermId::kTempo, facts.position().side_to_move(), weights.tempo,
           [&](Details& details) { details.Add(ToMoveClaim(facts)); });
}

ASSAY_INSTANTIATE_THEME(AddSpaceAndTime);

}  // namespace assay
