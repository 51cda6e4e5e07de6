// The page: what an author of terms looks at first. Each term is a row with its
// interval on a common axis, so that what earns its place stands apart from
// what does not.
#include <algorithm>
#include <cmath>
#include <cstdio>

#include "bench/worth/report.h"

namespace assay::bench {
namespace {

std::string Fixed(double value, int digits) {
  char text[64];
  std::snprintf(text, sizeof text, "%.*f", digits, value);
  return text;
}

std::string Text(std::string_view text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

constexpr const char* kHead = R"(<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>What each term is worth</title>
<style>
:root { --ink: #26303a; --soft: #6c7883; --line: #d9dee2; --paper: #fbfaf7;
  --good: #2f6f6b; --bad: #b4552d; --mark: #c9a13b; }
body { margin: 0 auto; max-width: 62rem; padding: 2rem 1.2rem 4rem;
  background: var(--paper); color: var(--ink);
  font: 15px/1.5 "Source Sans 3", "Noto Sans", "Segoe UI", sans-serif; }
h1 { font-weight: 600; font-size: 1.7rem; margin: 0; }
h2 { font-weight: 600; font-size: 1.15rem; margin: 2.6rem 0 .3rem; }
p { margin: .2rem 0 .8rem; max-width: 46rem; color: var(--soft); }
.figures { display: flex; flex-wrap: wrap; gap: 1.6rem; margin: 1.2rem 0; }
.figures div { min-width: 7rem; }
.figures b { display: block; font-size: 1.5rem; font-weight: 600; }
.figures span { color: var(--soft); font-size: .85rem; }
table { border-collapse: collapse; width: 100%; }
th { text-align: right; font-weight: 600; font-size: .8rem;
  color: var(--soft); padding: .2rem .5rem; border-bottom: 1px solid var(--line); }
td { text-align: right; padding: .16rem .5rem;
  border-bottom: 1px solid #eceef0; font-variant-numeric: tabular-nums; }
th:first-child, td:first-child { text-align: left; padding-left: 0; }
td.chart { width: 16rem; padding: 0; }
td small { color: var(--soft); }
svg text { font: 11px sans-serif; fill: var(--soft); }
svg { display: block; overflow: visible; }
</style></head><body>
)";

std::string Row(const std::string& label, const std::string& value) {
  return "<div><b>" + value + "</b><span>" + label + "</span></div>";
}

// A square root axis: small worths stay apart, large ones stay on the page.
class WorthAxis {
 public:
  WorthAxis(double low, double high)
      : low_(Root(low)), high_(std::max(Root(high), Root(low) + 1e-6)) {}
  double X(double loss) const {
    return 250 * (Root(loss) - low_) / (high_ - low_);
  }

 private:
  static double Root(double loss) {
    return std::copysign(std::sqrt(std::abs(loss)), loss);
  }
  double low_;
  double high_;
};

std::string Interval(const Tally::TermWorth& term, const WorthAxis& axis) {
  const double loss = term.loss[Tally::kOut];
  const char* colour = term.low > 0    ? "var(--good)"
                       : term.high < 0 ? "var(--bad)"
                                       : "var(--mark)";
  const double zero = axis.X(0);
  std::string out = "<svg width=\"250\" height=\"18\">";
  out += "<line x1=\"" + Fixed(zero, 1) + "\" x2=\"" + Fixed(zero, 1) +
         "\" y1=\"0\" y2=\"18\" stroke=\"var(--line)\"/>";
  out += "<line x1=\"" + Fixed(axis.X(term.low), 1) + "\" x2=\"" +
         Fixed(axis.X(term.high), 1) + "\" y1=\"9\" y2=\"9\" stroke=\"" +
         colour +
         "\" stroke-width=\"3\" stroke-linecap=\"round\" "
         "opacity=\"0.45\"/>";
  out += "<circle cx=\"" + Fixed(axis.X(loss), 1) +
         "\" cy=\"9\" r=\"4\" fill=\"" + std::string(colour) + "\"/></svg>";
  return out;
}

std::string TermRows(const std::vector<Tally::TermWorth>& terms) {
  double low = 0;
  double high = 0;
  for (const Tally::TermWorth& term : terms) {
    low = std::min(low, std::min(term.low, term.loss[Tally::kOut]));
    high = std::max(high, std::max(term.high, term.loss[Tally::kOut]));
  }
  const WorthAxis axis(low, high);
  std::string out =
      "<table><tr><th>term</th><th>worth, interval</th><th>left out</th>"
      "<th>halved</th><th>half again</th><th>fires</th><th>size, cp</th>"
      "<th>goes with</th></tr>\n";
  for (const Tally::TermWorth& term : terms) {
    const TermInfo& info = Info(term.id);
    out += "<tr><td title=\"" + Text(info.definition) + "\">" +
           Text(info.title) + "</td><td class=\"chart\">" +
           Interval(term, axis) + "</td>";
    for (const double loss : {term.loss[Tally::kOut], term.loss[Tally::kHalf],
                              term.loss[Tally::kMore]}) {
      out += "<td>" + Fixed(1000 * loss, 2) + "</td>";
    }
    out += "<td>" + Fixed(100 * term.fires, 1) + "%</td><td>" +
           Fixed(term.size, 1) + "</td><td><small>";
    if (!term.companions.empty()) {
      out += Text(Info(term.companions[0].id).title) + " " +
             Fixed(term.companions[0].correlation, 2);
    }
    out += "</small></td></tr>\n";
  }
  return out + "</table>\n";
}

// Expected points by score: the curve, and what happened by bucket, a disc's
// area being its positions.
std::string CalibrationChart(const Tally& tally) {
  constexpr double kWidth = 620;
  constexpr double kHeight = 300;
  constexpr double kReach = 650;
  const auto x = [&](double cp) {
    return 40 + (kWidth - 50) * (cp + kReach) / (2 * kReach);
  };
  const auto y = [&](double points) {
    return 10 + (kHeight - 40) * (1 - points);
  };
  std::string out =
      "<svg viewBox=\"0 0 620 300\" width=\"100%\" "
      "style=\"max-width:44rem\">";
  for (const double points : {0.0, 0.25, 0.5, 0.75, 1.0}) {
    out += "<line x1=\"40\" x2=\"610\" y1=\"" + Fixed(y(points), 1) +
           "\" y2=\"" + Fixed(y(points), 1) + "\" stroke=\"var(--line)\"/>" +
           "<text x=\"6\" y=\"" + Fixed(y(points) + 4, 1) + "\">" +
           Fixed(100 * points, 0) + "%</text>";
  }
  for (int cp = -600; cp <= 600; cp += 200) {
    out += "<text text-anchor=\"middle\" x=\"" + Fixed(x(cp), 1) +
           "\" y=\"292\">" + std::to_string(cp) + "</text>";
  }
  out +=
      "<polyline fill=\"none\" stroke=\"var(--soft)\" "
      "stroke-dasharray=\"5 4\" points=\"";
  for (int cp = -650; cp <= 650; cp += 10) {
    out +=
        Fixed(x(cp), 1) + "," + Fixed(y(Expected(cp, tally.scale())), 1) + " ";
  }
  out += "\"/>";
  const std::vector<CalibrationPoint> points =
      Calibration(tally.scores(), tally.scale());
  double most = 1;
  for (const CalibrationPoint& point : points) {
    most = std::max(most, point.positions);
  }
  for (const CalibrationPoint& point : points) {
    const double middle =
        std::clamp((point.from + point.to) / 2.0, -640.0, 640.0);
    out += "<circle cx=\"" + Fixed(x(middle), 1) + "\" cy=\"" +
           Fixed(y(point.actual), 1) + "\" r=\"" +
           Fixed(2 + 8 * std::sqrt(point.positions / most), 1) +
           "\" fill=\"var(--good)\" opacity=\"0.75\"><title>" +
           std::to_string(point.from) + " to " + std::to_string(point.to) +
           ": predicted " + Fixed(point.predicted, 3) + ", actual " +
           Fixed(point.actual, 3) + ", " + Fixed(point.positions, 0) +
           " positions</title></circle>";
  }
  return out + "</svg>\n";
}

std::string SliceRows(const Tally& tally) {
  std::string out =
      "<table><tr><th>positions with</th><th>how many</th><th>log loss</th>"
      "<th>a constant</th><th>explained</th></tr>\n";
  for (const Slice& slice : tally.slices()) {
    if (slice.scores.positions() == 0) continue;
    const double loss = slice.scores.Loss(tally.scale());
    const double constant = slice.scores.ConstantLoss();
    const double gain = constant > 0 ? (constant - loss) / constant : 0;
    out += "<tr><td>" + Text(slice.group) + ": " + Text(slice.name) +
           "</td><td>" + Fixed(slice.scores.positions(), 0) + "</td><td>" +
           Fixed(loss, 5) + "</td><td>" + Fixed(constant, 5) +
           "</td><td class=\"chart\"><svg width=\"250\" height=\"14\">"
           "<rect y=\"3\" height=\"8\" rx=\"2\" fill=\"var(--good)\" "
           "opacity=\"0.6\" width=\"" +
           Fixed(std::clamp(1000 * gain, 0.0, 250.0), 1) + "\"/><text x=\"" +
           Fixed(std::clamp(1000 * gain, 0.0, 205.0) + 5, 1) + "\" y=\"11\">" +
           Fixed(100 * gain, 1) + "%</text></svg></td></tr>\n";
  }
  return out + "</table>\n";
}

}  // namespace

std::string ToHtml(const Tally& tally, const std::string& source) {
  const double loss = tally.scores().Loss(tally.scale());
  std::string out = kHead;
  out += "<h1>What each term is worth</h1>\n<p>" + Text(source) +
         "; catalogue " + std::to_string(kCatalogueVersion) + ", weights " +
         Fingerprint(tally.weights()) + "</p>\n<div class=\"figures\">";
  out += Row("positions", Fixed(tally.scores().positions(), 0)) +
         Row("games", std::to_string(tally.games())) +
         Row("log loss", Fixed(loss, 5)) +
         Row("a constant's", Fixed(tally.scores().ConstantLoss(), 5)) +
         Row("scale, centipawns", Fixed(tally.scale(), 1)) + "</div>\n";
  out +=
      "<h2>Terms</h2>\n<p>How much worse results are predicted, in "
      "thousandths of log loss, without the term, with half of its weights "
      "and with half as much again. The line is the 95% interval over "
      "games, on a square root axis; a term whose line crosses zero has not "
      "earned its place on these games, and one that gains by a change has "
      "the wrong size.</p>\n" +
      TermRows(tally.Terms());
  out +=
      "<h2>Predicted and actual</h2>\n<p>White's share of the points by "
      "score: the curve is what the scale expects, each disc what "
      "happened.</p>\n" +
      CalibrationChart(tally);
  out +=
      "<h2>By phase, structure and material</h2>\n<p>The scale is the one "
      "of all positions.</p>\n" +
      SliceRows(tally);
  return out + "</body></html>\n";
}

}  // namespace assay::bench
