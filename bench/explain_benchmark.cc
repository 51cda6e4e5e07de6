// A whole static explanation, in microseconds and in calls for memory.
#include <benchmark/benchmark.h>

#include "assay/explain/assayer.h"
#include "assay/explain/text.h"
#include "assay/plans/planner.h"
#include "bench/allocations.h"
#include "bench/main.h"
#include "bench/positions.h"

namespace assay::bench {
namespace {

const std::vector<Position>& Positions() {
  static const auto& positions = *new std::vector<Position>(ManyPositions());
  return positions;
}

void ExplainStatic(benchmark::State& state) {
  const Assayer assayer;
  ExplainOptions options;
  options.static_only = true;
  const std::vector<Position>& positions = Positions();
  std::size_t at = 0;
  const std::uint64_t before = Allocations();
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        assayer.Explain(positions[at], options).summary.size());
    at = at + 1 == positions.size() ? 0 : at + 1;
  }
  state.SetItemsProcessed(state.iterations());
  state.counters["allocations"] =
      benchmark::Counter(static_cast<double>(Allocations() - before),
                         benchmark::Counter::kAvgIterations);
}
BENCHMARK(ExplainStatic)->Unit(benchmark::kMicrosecond);

// Both sides' plans alone.
void FindPlansStatic(benchmark::State& state) {
  const Weights weights;
  const std::vector<Position>& positions = Positions();
  std::size_t at = 0;
  for (auto _ : state) {
    const Facts facts(positions[at]);
    benchmark::DoNotOptimize(FindPlans(facts, weights, 3).of[0].size());
    at = at + 1 == positions.size() ? 0 : at + 1;
  }
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(FindPlansStatic)->Unit(benchmark::kMicrosecond);

void CheckAnswers() {
  const Assayer assayer;
  ExplainOptions options;
  options.static_only = true;
  for (std::size_t i = 0; i < Positions().size(); i += 17) {
    const Explanation explanation = assayer.Explain(Positions()[i], options);
    Check("score", explanation.score_cp, assayer.Score(Positions()[i]));
  }
}

}  // namespace
}  // namespace assay::bench

int main(int argc, char** argv) {
  return assay::bench::RunChecked(argc, argv, assay::bench::CheckAnswers);
}
