// The one list of themes, used by both the ledger and the score-only path.
#include "assay/terms/ledger.h"

#include "assay/terms/sink.h"

namespace assay {
namespace {

template <class Sink>
void AddAllThemes(const Facts& facts, const Weights& weights, Sink& sink) {
  AddMaterial(facts, weights, sink);
  AddPawns(facts, weights, sink);
  AddPassedPawns(facts, weights, sink);
  AddPieces(facts, weights, sink);
  AddMinorPieces(facts, weights, sink);
  AddRooks(facts, weights, sink);
  AddDangers(facts, weights, sink);
  AddKing(facts, weights, sink);
  AddKingAttack(facts, weights, sink);
  AddSpaceAndTime(facts, weights, sink);
  AddLoneKing(facts, weights, sink);
  AddEndings(facts, weights, sink);  // last: it sees the sum of the rest
}

}  // namespace

void MakeLedger(const Facts& facts, const Weights& weights, Ledger& ledger) {
  ledger.Clear();
  LedgerSink sink(facts.phase(), ledger);
  AddAllThemes(facts, weights, sink);
}

Centipawns ScoreOf(const Position& position, const Weights& weights) {
  const Facts facts(position);
  ScoreSink sink(facts.phase());
  AddAllThemes(facts, weights, sink);
  return sink.score_cp();
}

Centipawns LastingScoreOf(const Position& position, const Weights& weights) {
  const Facts facts(position);
  LastingSink sink(facts.phase());
  AddAllThemes(facts, weights, sink);
  return sink.score_cp();
}

TermScores ScoreByTerm(const Facts& facts, const Weights& weights) {
  TermScores scores;
  TermSink sink(facts.phase(), scores);
  AddAllThemes(facts, weights, sink);
  return scores;
}

void AddTermCosts(const Facts& facts, const Weights& weights,
                  TermCosts& costs) {
  CostSink sink(facts.phase(), costs);
  AddAllThemes(facts, weights, sink);
}

}  // namespace assay
