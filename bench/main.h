// What every benchmark program does: it checks its answers, then times, and
// last tells how much memory the process ever had.
#ifndef ASSAY_BENCH_MAIN_H_
#define ASSAY_BENCH_MAIN_H_

#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include <cstddef>

namespace assay::bench {

inline void PeakMemory(benchmark::State& state) {
  for (auto _ : state) {
  }
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  constexpr double kKibPerMib = 1024;
  state.counters["peak_MiB"] =
      static_cast<double>(usage.ru_maxrss) / kKibPerMib;
}

// Runs `work` on one item after another, from the first again after the last.
template <class Items, class Work>
void Each(benchmark::State& state, const Items& items, const Work& work) {
  std::size_t at = 0;
  for (auto _ : state) {
    work(items[at]);
    at = at + 1 == items.size() ? 0 : at + 1;
  }
  state.SetItemsProcessed(state.iterations());
}

// `check` ends the program where an answer is wrong.
inline int RunChecked(int argc, char** argv, void (*check)()) {
  check();
  benchmark::RegisterBenchmark("PeakMemory", PeakMemory)->Iterations(1);
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  benchmark::Shutdown();
  return 0;
}

}  // namespace assay::bench

#endif  // ASSAY_BENCH_MAIN_H_
