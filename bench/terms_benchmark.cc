// Facts, score alone, and the full ledger with claims, in positions a second.
#include <benchmark/benchmark.h>

#include "assay/facts/claim_lists.h"
#include "assay/terms/ledger.h"
#include "assay/terms/sink.h"
#include "bench/main.h"
#include "bench/positions.h"

namespace assay::bench {
namespace {

const std::vector<Position>& Positions() {
  static const auto& positions = *new std::vector<Position>(ManyPositions());
  return positions;
}

void FindFacts(benchmark::State& state) {
  Each(state, Positions(), [](const Position& position) {
    const Facts facts(position);
    benchmark::DoNotOptimize(facts.phase());
  });
}
BENCHMARK(FindFacts);

void ScoreOnly(benchmark::State& state) {
  const Weights weights;
  Each(state, Positions(), [&](const Position& position) {
    benchmark::DoNotOptimize(ScoreOf(position, weights));
  });
}
BENCHMARK(ScoreOnly);

void FullLedger(benchmark::State& state) {
  const Weights weights;
  Ledger ledger;
  Each(state, Positions(), [&](const Position& position) {
    const Facts facts(position);
    MakeLedger(facts, weights, ledger);
    benchmark::DoNotOptimize(ledger.entries.data());
  });
}
BENCHMARK(FullLedger);

void EveryClaim(benchmark::State& state) {
  Each(state, Positions(), [](const Position& position) {
    const Facts facts(position);
    benchmark::DoNotOptimize(AllClaims(facts).size());
  });
}
BENCHMARK(EveryClaim);

// One theme alone, on facts that are there already.
using ThemeFunction = void (*)(const Facts&, const Weights&, ScoreSink&);

void ScoreTheme(benchmark::State& state, ThemeFunction theme) {
  static const auto& all_facts =
      *new std::vector<Facts>(Positions().begin(), Positions().end());
  const Weights weights;
  Each(state, all_facts, [&](const Facts& facts) {
    ScoreSink sink(facts.phase());
    theme(facts, weights, sink);
    benchmark::DoNotOptimize(sink.score_cp());
  });
}
BENCHMARK_CAPTURE(ScoreTheme, material, AddMaterial<ScoreSink>);
BENCHMARK_CAPTURE(ScoreTheme, pawns, AddPawns<ScoreSink>);
BENCHMARK_CAPTURE(ScoreTheme, passed_pawns, AddPassedPawns<ScoreSink>);
BENCHMARK_CAPTURE(ScoreTheme, pieces, AddPieces<ScoreSink>);
BENCHMARK_CAPTURE(ScoreTheme, minor_pieces, AddMinorPieces<ScoreSink>);
BENCHMARK_CAPTURE(ScoreTheme, rooks, AddRooks<ScoreSink>);
BENCHMARK_CAPTURE(ScoreTheme, dangers, AddDangers<ScoreSink>);
BENCHMARK_CAPTURE(ScoreTheme, king, AddKing<ScoreSink>);
BENCHMARK_CAPTURE(ScoreTheme, king_attack, AddKingAttack<ScoreSink>);
BENCHMARK_CAPTURE(ScoreTheme, space_and_time, AddSpaceAndTime<ScoreSink>);
BENCHMARK_CAPTURE(ScoreTheme, lone_king, AddLoneKing<ScoreSink>);
BENCHMARK_CAPTURE(ScoreTheme, endings, AddEndings<ScoreSink>);

constexpr long long kScoreChecksum = 716785200;

// The two paths must agree on every position before either is timed.
void CheckAnswers() {
  const Weights weights;
  Ledger ledger;
  long long checksum = 0;
  for (const Position& position : Positions()) {
    const Facts facts(position);
    MakeLedger(facts, weights, ledger);
    long long sum = 0;
    for (const Entry& entry : ledger.entries) sum += entry.value_cp;
    Check("sum of the ledger", sum, ScoreOf(position, weights));
    checksum = (checksum * 31 + sum) % 1000000007;
  }
  // Of the default weights: whoever changes what a term is worth writes the new
  // number here, and compares times of different numbers with care.
  Check("checksum of the scores", checksum, kScoreChecksum);
}

}  // namespace
}  // namespace assay::bench

int main(int argc, char** argv) {
  return assay::bench::RunChecked(argc, argv, assay::bench::CheckAnswers);
}
