#include "bench/worth/histogram.h"

#include <algorithm>
#include <cmath>

namespace assay::bench {
namespace {

// Too few to tell an actual share of points.
constexpr double kFewest = 30;

std::vector<int> FineEdges() {
  constexpr int kBucket = 50;
  constexpr int kFarthest = 600;
  std::vector<int> edges;
  for (int edge = -kFarthest; edge <= kFarthest; edge += kBucket) {
    edges.push_back(edge);
  }
  return edges;
}

}  // namespace

double Expected(double score, double scale) {
  return 1 / (1 + std::exp(-score / scale));
}

double LossOf(double score, double points, double scale) {
  const double odds = score / scale;
  return std::log1p(std::exp(-std::abs(odds))) +
         (odds > 0 ? (1 - points) * odds : -points * odds);
}

double Histogram::positions() const {
  double sum = 0;
  for (const std::uint32_t n : positions_) sum += n;
  return sum;
}

double Histogram::points() const {
  double sum = 0;
  for (const double p : points_) sum += p;
  return sum;
}

double Histogram::Loss(double scale) const {
  double sum = 0;
  double all = 0;
  for (std::size_t i = 0; i < positions_.size(); ++i) {
    const double n = positions_[i];
    if (n == 0) continue;
    all += n;
    sum += n * LossOf(static_cast<double>(i) - kLimit, points_[i] / n, scale);
  }
  return all == 0 ? 0 : sum / all;
}

double Histogram::ConstantLoss() const {
  const double mean = positions() == 0 ? 0.5 : points() / positions();
  if (mean <= 0 || mean >= 1) return 0;
  return -mean * std::log(mean) - (1 - mean) * std::log(1 - mean);
}

double Histogram::BestScale() const {
  constexpr double kGolden = 0.6180339887498949;
  double low = 20;
  double high = 2000;
  while (high - low > 0.05) {
    const double left = high - kGolden * (high - low);
    const double right = low + kGolden * (high - low);
    if (Loss(left) < Loss(right)) {
      high = right;
    } else {
      low = left;
    }
  }
  return (low + high) / 2;
}

Histogram::Bucket Histogram::Sum(int first, int last, double scale) const {
  Bucket bucket;
  for (int score = std::max(first, -kLimit); score <= std::min(last, kLimit);
       ++score) {
    const double n = positions_[score + kLimit];
    bucket.positions += n;
    bucket.points += points_[score + kLimit];
    bucket.expected += n * Expected(score, scale);
  }
  return bucket;
}

const std::vector<int>& CoarseEdges() {
  static const auto& edges =
      *new std::vector<int>{-300, -200, -100, -50, 0, 50, 100, 200, 300};
  return edges;
}

std::vector<CalibrationPoint> Calibration(const Histogram& scores, double scale,
                                          Buckets buckets) {
  std::vector<CalibrationPoint> points;
  const auto add = [&](int from, int to) {
    const Histogram::Bucket bucket = scores.Sum(from, to, scale);
    if (bucket.positions < kFewest) return;
    points.push_back({from, to, bucket.positions,
                      bucket.expected / bucket.positions,
                      bucket.points / bucket.positions});
  };
  int from = -Histogram::kLimit;
  for (const int edge :
       buckets == Buckets::kFine ? FineEdges() : CoarseEdges()) {
    add(from, edge - 1);
    from = edge;
  }
  add(from, Histogram::kLimit);
  return points;
}

double MeanMiss(const std::vector<CalibrationPoint>& points) {
  double missed = 0;
  double positions = 0;
  for (const CalibrationPoint& point : points) {
    missed += point.positions * std::abs(point.actual - point.predicted);
    positions += point.positions;
  }
  return positions == 0 ? 0 : missed / positions;
}

}  // namespace assay::bench
