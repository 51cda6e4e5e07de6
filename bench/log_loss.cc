// How well the static score predicts results: the log loss over a file of
// positions with results, with the one scale that fits best.
//
//   zcat $ASSAY_DATA/fit.tsv.gz | build/bin/log_loss [WEIGHTS]
//
// Each line is FEN<TAB>result, the result being White's points (0, 0.5 or 1);
// what follows a second tab is not looked at. Expected points are
// 1 / (1 + exp(-score / scale)); the scale is found by golden-section search.
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <vector>

#include "assay/notation/fen.h"
#include "assay/terms/ledger.h"

namespace assay::bench {
namespace {

struct Sample {
  double score;
  double points;
};

double LogLoss(const std::vector<Sample>& samples, double scale) {
  double sum = 0;
  for (const Sample& sample : samples) {
    const double odds = sample.score / scale;
    // log(1 + exp(x)) without overflow, for both results.
    const double lost = std::log1p(std::exp(-std::abs(odds)));
    sum +=
        lost + (odds > 0 ? (1 - sample.points) * odds : -sample.points * odds);
  }
  return sum / static_cast<double>(samples.size());
}

double BestScale(const std::vector<Sample>& samples) {
  constexpr double kGolden = 0.6180339887498949;
  double low = 20;
  double high = 2000;
  while (high - low > 0.01) {
    const double left = high - kGolden * (high - low);
    const double right = low + kGolden * (high - low);
    if (LogLoss(samples, left) < LogLoss(samples, right)) {
      high = right;
    } else {
      low = left;
    }
  }
  return (low + high) / 2;
}

bool ReadWeights(const char* path, Weights& weights) {
  std::ifstream file(path);
  const std::string text((std::istreambuf_iterator<char>(file)),
                         std::istreambuf_iterator<char>());
  const absl::StatusOr<Weights> read = ParseWeights(text);
  if (!file || !read.ok()) {
    std::cerr << path << ": " << read.status().message() << '\n';
    return false;
  }
  weights = *read;
  return true;
}

int Run(int argc, char** argv) {
  Weights weights;
  if (argc > 1 && !ReadWeights(argv[1], weights)) return EXIT_FAILURE;
  std::vector<Sample> samples;
  int faulty = 0;
  for (std::string line; std::getline(std::cin, line);) {
    const std::size_t tab = line.find('\t');
    const absl::StatusOr<Position> position =
        PositionFromFen(line.substr(0, tab));
    if (tab == std::string::npos || !position.ok()) {
      ++faulty;
      continue;
    }
    const double points = std::strtod(line.c_str() + tab + 1, nullptr);
    samples.push_back(
        {static_cast<double>(ScoreOf(*position, weights)), points});
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
