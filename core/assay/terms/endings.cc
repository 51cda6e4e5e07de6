// What takes the rest of the ledger back: positions that nobody can win.
#include "assay/facts/claim_makers.h"
#include "assay/rules/draw.h"
#include "assay/terms/sink.h"

namespace assay {

template <class Sink>
void AddEndings(const Facts& facts, const Weights& /*weights*/, Sink& sink) {
  if (!IsInsufficientMaterial(facts.position())) return;
  const Centipawns rest = sink.score_cp();
  if (rest == 0) return;
  // The entry belongs to the side whose surplus it takes back.
  const Side side = rest > 0 ? Side::kWhite : Side::kBlack;
  const int loss = -(rest > 0 ? rest : -rest);
  sink.Add(TermId::kDeadPosition, side, Tapered{loss, loss},
           [&](Details& details) {
             details.Squares(facts.position().Occupied());
             details.Add(InsufficientClaim());
           });
}

ASSAY_INSTANTIATE_THEME(AddEndings);

}  // namespace assay
