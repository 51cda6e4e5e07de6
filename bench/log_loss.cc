// How well the static score predicts results: the log loss over a file of
// positions with results, with the one scale that fits best.
//
//   zcat $ASSAY_DATA/fit.tsv.gz | build/bin/log_loss [WEIGHTS]
//
// The form of the file, and the loss, are those of bench/results.h.
#include <cstdlib>
#include <iostream>
#include <string>
#include <vector>

#include "assay/terms/ledger.h"
#include "bench/results.h"
#include "bench/weights_file.h"

namespace assay::bench {
namespace {

int Run(int argc, char** argv) {
  Weights weights;
  if (argc > 1 && !ReadWeights(argv[1], weights)) return EXIT_FAILURE;
  std::vector<Sample> samples;
  int faulty = 0;
  for (const Result& result : ReadResults(std::cin, faulty)) {
    samples.push_back({static_cast<double>(ScoreOf(result.position, weights)),
                       result.points});
  }
  if (samples.empty()) {
    std::cerr << "no positions read\n";
    return EXIT_FAILURE;
  }
  const double scale = BestScale(samples);
  std::cout << samples.size() << " positions, " << faulty
            << " faulty lines, log loss " << LogLoss(samples, scale)
            << " at a scale of " << scale << " centipawns\n";
  return EXIT_SUCCESS;
}

}  // namespace
}  // namespace assay::bench

int main(int argc, char** argv) { return assay::bench::Run(argc, argv); }
