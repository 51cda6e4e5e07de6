// The tally as a table, as JSON, and as a page with charts.
#ifndef ASSAY_BENCH_WORTH_REPORT_H_
#define ASSAY_BENCH_WORTH_REPORT_H_

#include <string>
#include <vector>

#include "bench/worth/tally.h"

namespace assay::bench {

// `source` names what was read, for headings.
std::string ToTable(const Tally& tally, const std::string& source);
std::string ToJson(const Tally& tally, const std::string& source);
// Needs nothing from elsewhere: styles and charts are in the page.
std::string ToHtml(const Tally& tally, const std::string& source);

// What is told of a slice. The scale is that of all positions, unless own.
struct SliceFigures {
  double loss = 0;
  double constant_loss = 0;
  double own_scale = 0;
  double loss_at_own_scale = 0;
  double predicted = 0;  // White's mean points
  double actual = 0;
  double miss = 0;  // MeanMiss of the calibration
  std::vector<CalibrationPoint> calibration;
};
SliceFigures FiguresOf(const Slice& slice, double scale);

// Whether it has positions enough to show a calibration of.
bool IsLarge(const Slice& slice);

// "1.25"; "-" where halving and adding half give no minimum.
std::string BestFactor(const Tally::Worth& worth);

}  // namespace assay::bench

#endif  // ASSAY_BENCH_WORTH_REPORT_H_
