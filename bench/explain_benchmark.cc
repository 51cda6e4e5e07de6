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
  const std::uint64_t before = Allocations();
  Each(state, Positions(), [&](const Position& position) {
    benchmark::DoNotOptimize(assayer.Explain(position, options).summary.size());
  });
  state.counters["allocations"] =
      benchmark::Counter(static_cast<double>(Allocations() - before),
                         benchmark::Counter::kAvgIterations);
}
BENCHMARK(ExplainStatic)->Unit(benchmark::kMicrosecond);

// Both sides' plans alone.
void FindPlansStatic(benchmark::State& state) {
  const Weights weights;
  Each(state, Positions(), [&](const Position& position) {
    const Facts facts(position);
    benchmark::DoNotOptimize(FindPlans(facts, weights, 3).of[0].size());
  });
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
