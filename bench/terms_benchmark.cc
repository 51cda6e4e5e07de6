// Facts, score alone, and the full ledger with claims, in positions a second.
#include <benchmark/benchmark.h>

#include "assay/facts/claim_lists.h"
#include "assay/terms/ledger.h"
#include "bench/positions.h"

namespace assay::bench {
namespace {

const std::vector<Position>& Positions() {
  static const auto& positions = *new std::vector<Position>(ManyPositions());
  return positions;
}

// Runs `work` on one position after another.
template <class Work>
void Each(benchmark::State& state, const Work& work) {
  const std::vector<Position>& positions = Positions();
  std::size_t at = 0;
  for (auto _ : state) {
    work(positions[at]);
    at = at + 1 == positions.size() ? 0 : at + 1;
  }
  state.SetItemsProcessed(state.iterations());
}

void FindFacts(benchmark::State& state) {
  Each(state, [](const Position& position) {
    const Facts facts(position);
    benchmark::DoNotOptimize(facts.phase());
  });
}
BENCHMARK(FindFacts);

void ScoreOnly(benchmark::State& state) {
  const Weights weights;
  Each(state, [&](const Position& position) {
    benchmark::DoNotOptimize(ScoreOf(position, weights));
  });
}
BENCHMARK(ScoreOnly);

void FullLedger(benchmark::State& state) {
  const Weights weights;
  Ledger ledger;
  Each(state, [&](const Position& position) {
    const Facts facts(position);
    MakeLedger(facts, weights, ledger);
    benchmark::DoNotOptimize(ledger.entries.data());
  });
}
BENCHMARK(FullLedger);

void EveryClaim(benchmark::State& state) {
  Each(state, [](const Position& position) {
    const Facts facts(position);
    benchmark::DoNotOptimize(AllClaims(facts).size());
  });
}
BENCHMARK(EveryClaim);

// The two paths must agree on every position before either is timed.
void CheckAnswers() {
  const Weights weights;
  Ledger ledger;
  for (const Position& position : Positions()) {
    const Facts facts(position);
    MakeLedger(facts, weights, ledger);
    long long sum = 0;
    for (const Entry& entry : ledger.entries) sum += entry.value_cp;
    Check("sum of the ledger", sum, ScoreOf(position, weights));
  }
}

}  // namespace
}  // namespace assay::bench

int main(int argc, char** argv) {
  assay::bench::CheckAnswers();
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  benchmark::Shutdown();
  return 0;
}
