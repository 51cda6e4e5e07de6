// The tally as a table, as JSON, and as a page with charts.
#ifndef ASSAY_BENCH_WORTH_REPORT_H_
#define ASSAY_BENCH_WORTH_REPORT_H_

#include <string>

#include "bench/worth/tally.h"

namespace assay::bench {

// `source` names what was read, for headings.
std::string ToTable(const Tally& tally, const std::string& source);
std::string ToJson(const Tally& tally, const std::string& source);
// Needs nothing from elsewhere: styles and charts are in the page.
std::string ToHtml(const Tally& tally, const std::string& source);

// Buckets of score for the calibration: predicted against actual.
struct CalibrationPoint {
  int from = 0;  // centipawns
  int to = 0;
  double positions = 0;
  double predicted = 0;  // mean expected points
  double actual = 0;     // mean points
};
std::vector<CalibrationPoint> Calibration(const Histogram& scores,
                                          double scale);

}  // namespace assay::bench

#endif  // ASSAY_BENCH_WORTH_REPORT_H_
