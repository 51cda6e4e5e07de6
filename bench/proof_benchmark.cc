// The bounded search in nodes a second with the depth that it reaches, and
// whole explanations with the default proof budget in milliseconds.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>

#include "assay/explain/assayer.h"
#include "assay/proof/search.h"
#include "bench/main.h"
#include "bench/positions.h"

namespace assay::bench {
namespace {

constexpr std::size_t kExplained = 250;

SearchResult Searched(const Position& position, std::uint64_t nodes) {
  SearchLimits limits;
  limits.nodes = nodes;
  return Search(position, Weights(), limits);
}

// The named positions, each with the same budget, in turn.
void SearchNamed(benchmark::State& state) {
  const auto budget = static_cast<std::uint64_t>(state.range(0));
  std::vector<Position> positions;
  for (const NamedPosition& named : kPositions) {
    positions.push_back(FromFen(named.fen));
  }
  std::uint64_t nodes = 0;
  std::uint64_t depths = 0;
  std::size_t searches = 0;
  for (auto _ : state) {
    for (const Position& position : positions) {
      const SearchResult result = Searched(position, budget);
      nodes += result.nodes;
      depths += static_cast<std::uint64_t>(result.depth);
      ++searches;
    }
  }
  state.counters["nodes"] = benchmark::Counter(static_cast<double>(nodes),
                                               benchmark::Counter::kIsRate);
  state.counters["mean_depth"] =
      static_cast<double>(depths) / static_cast<double>(searches);
}
BENCHMARK(SearchNamed)->Arg(8000)->Arg(200000)->Unit(benchmark::kMillisecond);

// Distinct positions of all twelve kinds, evenly taken from ManyPositions().
std::vector<Position> SomePositions() {
  const std::vector<Position> many = ManyPositions();
  std::vector<Position> some;
  for (std::size_t i = 0; i < kExplained; ++i) {
    some.push_back(many[i * many.size() / kExplained]);
  }
  return some;
}

double Share(const std::vector<double>& sorted, double share) {
  return sorted[static_cast<std::size_t>(
      share * static_cast<double>(sorted.size() - 1))];
}

// One iteration explains every position once; p50 and p99 are over all of them.
void ExplainProved(benchmark::State& state) {
  const Assayer assayer;
  ExplainOptions options;
  options.proof_nodes = kDefaultProofNodes;
  const std::vector<Position> positions = SomePositions();
  std::vector<double> milliseconds;
  for (auto _ : state) {
    for (const Position& position : positions) {
      const auto start = std::chrono::steady_clock::now();
      benchmark::DoNotOptimize(
          assayer.Explain(position, options).summary.size());
      const std::chrono::duration<double, std::milli> took =
          std::chrono::steady_clock::now() - start;
      milliseconds.push_back(took.count());
    }
  }
  std::sort(milliseconds.begin(), milliseconds.end());
  state.counters["p50_ms"] = Share(milliseconds, 0.5);
  state.counters["p99_ms"] = Share(milliseconds, 0.99);
  state.counters["most_ms"] = milliseconds.back();
}
BENCHMARK(ExplainProved)->Unit(benchmark::kMillisecond);

constexpr long long kSearchChecksum = 386475308;

// Score, mate and first move of every named position. Of the default weights
// and the search as it is: whoever changes either writes the new number here,
// and compares times of different numbers with care.
void CheckAnswers() {
  long long checksum = 0;
  for (const NamedPosition& named : kPositions) {
    const SearchResult result =
        Searched(FromFen(named.fen), kDefaultProofNodes);
    for (const long long part :
         {static_cast<long long>(result.score_cp),
          static_cast<long long>(result.mate_in),
          static_cast<long long>(result.line.front().code()),
          static_cast<long long>(result.nodes)}) {
      checksum = (checksum * 31 + part) % 1000000007;
    }
  }
  Check("checksum of the searches", checksum, kSearchChecksum);
}

}  // namespace
}  // namespace assay::bench

int main(int argc, char** argv) {
  return assay::bench::RunChecked(argc, argv, assay::bench::CheckAnswers);
}
