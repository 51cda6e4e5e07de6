// Positions with results, and how well scores predict them.
//
// Each line of a file is FEN<TAB>result, the result being White's points (0,
// 0.5 or 1); what follows a second tab is not looked at. Expected points are
// 1 / (1 + exp(-score / scale)); the scale is found by golden-section search.
#ifndef ASSAY_BENCH_RESULTS_H_
#define ASSAY_BENCH_RESULTS_H_

#include <cmath>
#include <cstdlib>
#include <istream>
#include <string>
#include <vector>

#include "assay/notation/fen.h"

namespace assay::bench {

struct Result {
  Position position;
  double points;  // White's
};

// Counts lines that are no position with a result in `faulty`.
inline std::vector<Result> ReadResults(std::istream& in, int& faulty) {
  std::vector<Result> results;
  for (std::string line; std::getline(in, line);) {
    const std::size_t tab = line.find('\t');
    const absl::StatusOr<Position> position =
        PositionFromFen(line.substr(0, tab));
    if (tab == std::string::npos || !position.ok()) {
      ++faulty;
      continue;
    }
    results.push_back(
        {*position, std::strtod(line.c_str() + tab + 1, nullptr)});
  }
  return results;
}

struct Sample {
  double score;
  double points;
};

inline double LogLoss(const std::vector<Sample>& samples, double scale) {
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

inline double BestScale(const std::vector<Sample>& samples) {
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

}  // namespace assay::bench

#endif  // ASSAY_BENCH_RESULTS_H_
