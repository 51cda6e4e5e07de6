// Positions and points by score: what losses and calibrations are found from.
#ifndef ASSAY_BENCH_WORTH_HISTOGRAM_H_
#define ASSAY_BENCH_WORTH_HISTOGRAM_H_

#include <cstdint>
#include <vector>

namespace assay::bench {

// White's expected points: 1 / (1 + exp(-score / scale)).
double Expected(double score, double scale);

// The natural log loss of one position; draws are half.
double LossOf(double score, double points, double scale);

// Scores beyond the ends count as the ends.
class Histogram {
 public:
  static constexpr int kLimit = 1500;

  Histogram() : positions_(2 * kLimit + 1), points_(2 * kLimit + 1) {}
  void Add(int score, double points) {
    const int at = (score < -kLimit  ? -kLimit
                    : score > kLimit ? kLimit
                                     : score) +
                   kLimit;
    ++positions_[at];
    points_[at] += points;
  }
  double positions() const;
  double points() const;
  double Loss(double scale) const;
  // The loss of always expecting the mean.
  double ConstantLoss() const;
  // The scale with the least loss.
  double BestScale() const;
  // Sums over scores from `first` to `last`.
  struct Bucket {
    double positions = 0;
    double points = 0;
    double expected = 0;
  };
  Bucket Sum(int first, int last, double scale) const;

 private:
  std::vector<std::uint32_t> positions_;
  std::vector<double> points_;
};

// A bucket of scores: predicted against actual.
struct CalibrationPoint {
  int from = 0;  // centipawns
  int to = 0;
  double positions = 0;
  double predicted = 0;  // mean expected points
  double actual = 0;     // mean points
};

// Buckets from one edge to below the next, and beyond the outer ones; those of
// few positions are left out. kFine is for all positions, kCoarse for a part.
enum class Buckets { kFine, kCoarse };
std::vector<CalibrationPoint> Calibration(const Histogram& scores, double scale,
                                          Buckets buckets);
// The edges of kCoarse.
const std::vector<int>& CoarseEdges();

// How far predicted is from actual in the mean, every position counting alike.
double MeanMiss(const std::vector<CalibrationPoint>& points);

}  // namespace assay::bench

#endif  // ASSAY_BENCH_WORTH_HISTOGRAM_H_
