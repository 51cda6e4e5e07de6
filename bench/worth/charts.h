// The drawings of the page, as SVG. What they show is in words or numbers
// beside them, too.
#ifndef ASSAY_BENCH_WORTH_CHARTS_H_
#define ASSAY_BENCH_WORTH_CHARTS_H_

#include <string>
#include <vector>

#include "bench/worth/tally.h"

namespace assay::bench {

// A term's loss when left out, with its interval. One axis for all rows of a
// table, widest at zero: small worths stay apart, large ones on the page.
class WorthAxis {
 public:
  explicit WorthAxis(const std::vector<Tally::Worth>& rows);
  // The axis itself, for the table's head.
  std::string Ticks() const;
  std::string Interval(const Tally::Worth& worth) const;

 private:
  double X(double loss) const;

  double low_ = 0;  // on the axis, not losses
  double high_ = 0;
};

// The loss with half, all and half again of a term's weights, as the parabola
// through the three: its lowest point is where the weight would be.
std::string SizeCurve(const Tally::Worth& worth);

// What the scale expects (dashed), and what happened: a disc a bucket, its area
// the number of positions. `own_scale` draws a second curve; 0: none.
std::string CalibrationChart(const std::vector<CalibrationPoint>& points,
                             double scale);
std::string SmallCalibrationChart(const std::vector<CalibrationPoint>& points,
                                  double scale, double own_scale);

// A share of 1 as a bar with its percent.
std::string ShareBar(double share, double full);

}  // namespace assay::bench

#endif  // ASSAY_BENCH_WORTH_CHARTS_H_
