// Move generation: perft in leaves a second, legal moves and FENs in positions
// a second.
#include <benchmark/benchmark.h>

#include "bench/main.h"
#include "bench/positions.h"

namespace assay::bench {
namespace {

struct PerftRow {
  const NamedPosition& position;
  int depth;
  long long leaves;  // published, see tests/rules/perft_test.cc
};
const PerftRow kPerftRows[] = {
    {kPositions[0], 6, 119060324},
    {kPositions[1], 4, 4085603},
    {kPositions[2], 5, 674624},
};

void Perft(benchmark::State& state, const PerftRow& row) {
  const Position position = FromFen(row.position.fen);
  long long leaves = 0;
  for (auto _ : state) {
    leaves += static_cast<long long>(assay::Perft(position, row.depth));
  }
  state.counters["leaves/s"] = benchmark::Counter(static_cast<double>(leaves),
                                                  benchmark::Counter::kIsRate);
}

void ListLegalMoves(benchmark::State& state) {
  Each(state, ManyPositions(), [](const Position& position) {
    MoveList moves;
    LegalMoves(position, moves);
    benchmark::DoNotOptimize(moves.size());
  });
}
BENCHMARK(ListLegalMoves);

// Reading a FEN, which checks that the position can be.
void ReadFen(benchmark::State& state) {
  std::vector<std::string> fens;
  for (const Position& position : ManyPositions()) {
    fens.push_back(ToFen(position));
  }
  Each(state, fens, [](const std::string& fen) {
    benchmark::DoNotOptimize(PositionFromFen(fen).ok());
  });
}
BENCHMARK(ReadFen);

void CheckAnswers() {
  for (const PerftRow& row : kPerftRows) {
    const Position position = FromFen(row.position.fen);
    Check(row.position.name,
          static_cast<long long>(assay::Perft(position, row.depth)),
          row.leaves);
  }
}

}  // namespace
}  // namespace assay::bench

int main(int argc, char** argv) {
  for (const auto& row : assay::bench::kPerftRows) {
    benchmark::RegisterBenchmark(
        (std::string("Perft/") + row.position.name).c_str(),
        assay::bench::Perft, row)
        ->Unit(benchmark::kMillisecond);
  }
  return assay::bench::RunChecked(argc, argv, assay::bench::CheckAnswers);
}
