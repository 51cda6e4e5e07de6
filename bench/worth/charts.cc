#include "bench/worth/charts.h"

#include <algorithm>
#include <cmath>

#include "bench/format.h"

namespace assay::bench {
namespace {

constexpr double kWorthWidth = 270;
constexpr double kCurveWidth = 64;
constexpr double kRow = 20;

// Nearly even up to a fifth of a thousandth, then ever closer.
double Bent(double loss) {
  constexpr double kEven = 0.0002;
  return std::asinh(loss / kEven);
}

// ` name="value"`.
std::string At(const char* name, double value) {
  return std::string(" ") + name + "=\"" + Fixed(value, 1) + "\"";
}

std::string LineTo(double x1, double y1, double x2, double y2,
                   const std::string& css_class) {
  return "<line" + At("x1", x1) + At("y1", y1) + At("x2", x2) + At("y2", y2) +
         " class=\"" + css_class + "\"/>";
}

std::string Disc(double x, double y, double radius,
                 const std::string& css_class, const std::string& title) {
  std::string out = "<circle" + At("cx", x) + At("cy", y) + At("r", radius) +
                    " class=\"" + css_class + "\"";
  return title.empty() ? out + "/>"
                       : out + "><title>" + title + "</title></circle>";
}

std::string Label(double x, double y, const std::string& anchor,
                  const std::string& text) {
  return "<text" + At("x", x) + At("y", y) + " text-anchor=\"" + anchor +
         "\">" + text + "</text>";
}

// An SVG that says nothing which its row does not.
std::string Beside(double width, double height, const std::string& content) {
  return "<svg aria-hidden=\"true\"" + At("width", width) +
         At("height", height) + " viewBox=\"0 0 " + Fixed(width, 0) + " " +
         Fixed(height, 0) + "\">" + content + "</svg>";
}

std::string Percent(double share) { return Fixed(100 * share, 0) + "%"; }

// Where scores and shares of points are in a chart.
struct Plane {
  double width;
  double height;
  double left;    // room for the labels
  double bottom;  // room for the labels
  double reach;   // centipawns to either side

  double X(double cp) const {
    const double inside = std::clamp(cp, -reach, reach);
    return left + (width - left - 12) * (inside + reach) / (2 * reach);
  }
  double Y(double points) const {
    return 10 + (height - bottom - 10) * (1 - points);
  }

  std::string Frame(const std::vector<double>& shares, int step) const {
    std::string out;
    for (const double share : shares) {
      out += LineTo(left, Y(share), width - 12, Y(share),
                    share == 0.5 ? "axis" : "grid") +
             Label(left - 6, Y(share) + 4, "end", Percent(share));
    }
    out += LineTo(X(0), Y(1), X(0), Y(0), "axis");
    for (int cp = -step * static_cast<int>(reach / step); cp <= reach;
         cp += step) {
      out += Label(X(cp), height - 4, "middle",
                   (cp > 0 ? "+" : "") + std::to_string(cp));
    }
    return out;
  }

  std::string Curve(double scale, const std::string& css_class) const {
    constexpr int kSteps = 60;
    std::string out = "<polyline class=\"" + css_class + "\" points=\"";
    for (int i = 0; i <= kSteps; ++i) {
      const double cp = -reach + 2 * reach * i / kSteps;
      out += Fixed(X(cp), 1) + "," + Fixed(Y(Expected(cp, scale)), 1) +
             (i < kSteps ? " " : "");
    }
    return out + "\"/>";
  }

  std::string Discs(const std::vector<CalibrationPoint>& points,
                    double largest) const {
    double most = 1;
    for (const CalibrationPoint& point : points) {
      most = std::max(most, point.positions);
    }
    std::string out;
    for (const CalibrationPoint& point : points) {
      const std::string title = std::to_string(point.from) + " to " +
                                std::to_string(point.to) + ": predicted " +
                                Fixed(100 * point.predicted, 1) + "%, actual " +
                                Fixed(100 * point.actual, 1) + "%, " +
                                Fixed(point.positions, 0) + " positions";
      const int from = std::max(point.from, -static_cast<int>(reach) - 50);
      const int to = std::min(point.to, static_cast<int>(reach) + 50);
      out += Disc(X((from + to) / 2.0), Y(point.actual),
                  2 + largest * std::sqrt(point.positions / most), "actual",
                  title);
    }
    return out;
  }
};

std::string Drawn(const Plane& plane, const std::string& name,
                  const std::string& content) {
  return "<svg role=\"img\" aria-label=\"" + name + "\" viewBox=\"0 0 " +
         Fixed(plane.width, 0) + " " + Fixed(plane.height, 0) + "\">" +
         content + "</svg>";
}

}  // namespace

WorthAxis::WorthAxis(const std::vector<Tally::Worth>& rows) {
  for (const Tally::Worth& row : rows) {
    const double loss = row.loss[Tally::kOut];
    low_ = std::min(low_, Bent(std::min(row.low, loss)));
    high_ = std::max(high_, Bent(std::max(row.high, loss)));
  }
  high_ = std::max(high_, low_ + 1);
}

double WorthAxis::X(double loss) const {
  constexpr double kMargin = 8;
  return kMargin +
         (kWorthWidth - 2 * kMargin) * (Bent(loss) - low_) / (high_ - low_);
}

std::string WorthAxis::Ticks() const {
  std::string content;
  double right_end = -100;
  for (const double tick :
       {-3.0, -1.0, -0.3, 0.0, 0.3, 1.0, 3.0, 10.0, 30.0, 100.0}) {
    const double at = Bent(tick / 1000);
    if (at < low_ || at > high_) continue;
    const double x = X(tick / 1000);
    constexpr double kApart = 22;
    if (x < right_end + kApart) continue;
    right_end = x;
    content +=
        Label(x, 11, "middle", Fixed(tick, std::abs(tick) == 0.3 ? 1 : 0)) +
        LineTo(x, 14, x, 18, "axis");
  }
  return Beside(kWorthWidth, 18, content);
}

std::string WorthAxis::Interval(const Tally::Worth& worth) const {
  const std::string kind = worth.low > 0    ? "earned"
                           : worth.high < 0 ? "harmful"
                                            : "unsure";
  const double middle = kRow / 2;
  std::string content =
      LineTo(X(0), 0, X(0), kRow, "axis") +
      LineTo(X(worth.low), middle, X(worth.high), middle, "reach " + kind);
  // Told by form, too: a disc, a ring, a square.
  const double x = X(worth.loss[Tally::kOut]);
  if (kind == "harmful") {
    content += "<rect" + At("x", x - 4) + At("y", middle - 4) +
               " width=\"8\" height=\"8\" class=\"mark harmful\"/>";
  } else {
    content += Disc(x, middle, 4, "mark " + kind, "");
  }
  return Beside(kWorthWidth, kRow, content);
}

std::string SizeCurve(const Tally::Worth& worth) {
  // loss(factor) = bend * (factor - 1)^2 + slope * (factor - 1).
  const double bend = 2 * (worth.loss[Tally::kHalf] + worth.loss[Tally::kMore]);
  const double slope = worth.loss[Tally::kMore] - worth.loss[Tally::kHalf];
  const auto loss = [&](double factor) {
    return bend * (factor - 1) * (factor - 1) + slope * (factor - 1);
  };
  constexpr double kFrom = 0.25;
  constexpr double kTo = 1.75;
  constexpr int kSteps = 12;
  double low = 0;
  double high = 0;
  for (int i = 0; i <= kSteps; ++i) {
    const double at = loss(kFrom + (kTo - kFrom) * i / kSteps);
    low = std::min(low, at);
    high = std::max(high, at);
  }
  const auto x = [&](double factor) {
    return 4 + (kCurveWidth - 8) * (factor - kFrom) / (kTo - kFrom);
  };
  const auto y = [&](double value) {
    return high - low < 1e-9
               ? kRow / 2
               : kRow - 4 - (kRow - 7) * (value - low) / (high - low);
  };
  std::string content = LineTo(x(1), 0, x(1), kRow, "axis");
  content += "<polyline class=\"size\" points=\"";
  for (int i = 0; i <= kSteps; ++i) {
    const double factor = kFrom + (kTo - kFrom) * i / kSteps;
    content += Fixed(x(factor), 1) + "," + Fixed(y(loss(factor)), 1) +
               (i < kSteps ? " " : "");
  }
  content += "\"/>";
  if (worth.best_factor > kFrom && worth.best_factor < kTo) {
    content +=
        Disc(x(worth.best_factor), y(loss(worth.best_factor)), 3, "least", "");
  }
  return Beside(kCurveWidth, kRow, content);
}

std::string CalibrationChart(const std::vector<CalibrationPoint>& points,
                             double scale) {
  const Plane plane{660, 330, 44, 28, 650};
  return Drawn(plane, "White's share of the points by score",
               plane.Frame({0, 0.25, 0.5, 0.75, 1}, 200) +
                   plane.Curve(scale, "expected") + plane.Discs(points, 9));
}

std::string SmallCalibrationChart(const std::vector<CalibrationPoint>& points,
                                  double scale, double own_scale) {
  const Plane plane{240, 170, 40, 22, 400};
  return Drawn(plane, "White's share of the points by score",
               plane.Frame({0, 0.5, 1}, 200) + plane.Curve(scale, "expected") +
                   plane.Curve(own_scale, "own") + plane.Discs(points, 6));
}

std::string ShareBar(double share, double full) {
  constexpr double kBar = 150;
  const double width = std::clamp(kBar * share / full, 0.0, kBar);
  return Beside(kBar + 50, 16,
                "<rect y=\"3\" height=\"10\"" + At("width", width) +
                    " class=\"bar\"/>" +
                    Label(width + 6, 12, "start", Fixed(100 * share, 1) + "%"));
}

}  // namespace assay::bench
