// What proof adds to counting: over a sample of positions with results, how
// often the proved verdict is another than the static one, and how well either
// score predicts the results.
//
//   zcat $ASSAY_DATA/fit.tsv.gz | build/bin/proved_loss [POSITIONS [NODES]]
//
// POSITIONS (5000) are taken evenly from the input; NODES (half of the default
// budget, as an explanation spends on its verdict) are searched for each. The
// form of the file, and the loss, are those of bench/results.h.
#include <algorithm>
#include <cstdlib>
#include <iostream>
#include <vector>

#include "assay/explain/verdict.h"
#include "assay/proof/questions.h"
#include "assay/rules/movegen.h"
#include "assay/terms/ledger.h"
#include "bench/results.h"

namespace assay::bench {
namespace {

int Run(int argc, char** argv) {
  const long wanted = argc > 1 ? std::atol(argv[1]) : 5000;
  const long nodes =
      argc > 2 ? std::atol(argv[2]) : static_cast<long>(kDefaultProofNodes) / 2;
  int faulty = 0;
  const std::vector<Result> results = ReadResults(std::cin, faulty);
  if (results.empty() || wanted <= 0 || nodes <= 0) {
    std::cerr << "no positions read, or POSITIONS or NODES not above 0\n";
    return EXIT_FAILURE;
  }
  const Weights weights;
  const Inquiry inquiry{weights, static_cast<std::uint64_t>(nodes), nullptr};
  std::vector<Sample> counted;
  std::vector<Sample> proved;
  long other_step = 0;
  long flagged = 0;
  const std::size_t step = std::max<std::size_t>(
      1, results.size() / static_cast<std::size_t>(wanted));
  for (std::size_t i = 0;
       i < results.size() && counted.size() < static_cast<std::size_t>(wanted);
       i += step) {
    const Position& position = results[i].position;
    if (!HasLegalMove(position)) continue;
    const Centipawns static_cp = ScoreOf(position, weights);
    const Proof proof = Prove(position, inquiry);
    const Centipawns proved_cp = ScoreFor(proof, Side::kWhite);
    counted.push_back({static_cast<double>(static_cp), results[i].points});
    proved.push_back({static_cast<double>(std::clamp(proved_cp, -2000, 2000)),
                      results[i].points});
    if (VerdictStep(static_cp) != VerdictStep(proved_cp)) ++other_step;
    if (!AgreesWithCount(proof, static_cp)) ++flagged;
  }
  const auto share = [&](long count) {
    return 100.0 * static_cast<double>(count) /
           static_cast<double>(counted.size());
  };
  std::cout << counted.size() << " positions, " << faulty << " faulty lines, "
            << nodes << " nodes each\n"
            << "another verdict by a step or more: " << share(other_step)
            << " %\nmore than 60 cp apart, or mate: " << share(flagged)
            << " %\nlog loss: " << LogLoss(counted, BestScale(counted))
            << " counted, " << LogLoss(proved, BestScale(proved))
            << " proved\n";
  return EXIT_SUCCESS;
}

}  // namespace
}  // namespace assay::bench

int main(int argc, char** argv) { return assay::bench::Run(argc, argv); }
