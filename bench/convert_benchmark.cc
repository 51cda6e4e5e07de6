// From an explanation to what leaves the program: the contract's message, its
// bytes and its JSON, with how many bytes each has.
#include <benchmark/benchmark.h>

#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/v1/explanation.pb.h"
#include "bench/main.h"
#include "bench/positions.h"
#include "service/cli/print.h"
#include "service/convert/convert.h"

namespace assay::bench {
namespace {

const Assayer& TheAssayer() {
  static const auto& assayer = *new Assayer;
  return assayer;
}

const std::vector<Explanation>& Explanations() {
  static const auto& explanations = *new std::vector<Explanation>([] {
    ExplainOptions options;
    options.static_only = true;
    std::vector<Explanation> made;
    for (const NamedPosition& named : kPositions) {
      made.push_back(TheAssayer().Explain(FromFen(named.fen), options));
    }
    return made;
  }());
  return explanations;
}

v1::Explanation Converted(const Explanation& explanation) {
  v1::Explanation message;
  service::ToProto(explanation, TheAssayer(), &message);
  return message;
}

// `size_of` makes something of each item and returns how many bytes it has.
template <class Item, class SizeOf>
void EachWithSize(benchmark::State& state, const std::vector<Item>& items,
                  const SizeOf& size_of) {
  std::size_t bytes = 0;
  Each(state, items, [&](const Item& item) { bytes += size_of(item); });
  state.counters["bytes"] = benchmark::Counter(
      static_cast<double>(bytes), benchmark::Counter::kAvgIterations);
}

std::vector<v1::Explanation> Messages() {
  std::vector<v1::Explanation> messages;
  for (const Explanation& explanation : Explanations()) {
    messages.push_back(Converted(explanation));
  }
  return messages;
}

void ExplanationToProto(benchmark::State& state) {
  EachWithSize(state, Explanations(), [](const Explanation& explanation) {
    return Converted(explanation).ByteSizeLong();
  });
}
BENCHMARK(ExplanationToProto)->Unit(benchmark::kMicrosecond);

void ProtoToBytes(benchmark::State& state) {
  EachWithSize(state, Messages(), [](const v1::Explanation& message) {
    return message.SerializeAsString().size();
  });
}
BENCHMARK(ProtoToBytes)->Unit(benchmark::kMicrosecond);

void ProtoToJson(benchmark::State& state) {
  EachWithSize(state, Messages(), [](const v1::Explanation& message) {
    return service::JsonLine(message).size();
  });
}
BENCHMARK(ProtoToJson)->Unit(benchmark::kMicrosecond);

// What was converted is what was said.
void CheckAnswers() {
  for (const Explanation& explanation : Explanations()) {
    const v1::Explanation message = Converted(explanation);
    Check("score", message.score_cp(), explanation.score_cp);
    Check("entries", message.ledger_size(),
          static_cast<long long>(explanation.ledger.size()));
    v1::Explanation read;
    Check("bytes read back", read.ParseFromString(message.SerializeAsString()),
          1);
    Check("summary", read.summary() == explanation.summary, 1);
  }
}

}  // namespace
}  // namespace assay::bench

int main(int argc, char** argv) {
  return assay::bench::RunChecked(argc, argv, assay::bench::CheckAnswers);
}
