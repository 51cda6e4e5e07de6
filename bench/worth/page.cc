// The page: what an author of terms looks at first. Each term is a row with its
// interval on a common axis, so that what earns its place stands apart from
// what does not, and with the curve of its size; then where scores promise too
// much or too little.
#include <algorithm>

#include "assay/lesson/markup.h"
#include "assay/terms/weights_text.h"
#include "bench/format.h"
#include "bench/worth/charts.h"
#include "bench/worth/report.h"

namespace assay::bench {
namespace {

constexpr const char* kHead = R"(<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>What each term is worth</title>
<style>
:root { color-scheme: light dark; --ink: #1d1a17; --soft: #5a5348;
  --paper: #fffdf8; --wash: #f5f0e4; --line: #8d8473; --hair: #ddd5c4;
  --good: #14555c; --bad: #8a3f0d; --open: #8d6a12; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #efe7d8; --soft: #bdb2a0; --paper: #1d1a17; --wash: #292520;
    --line: #857b6b; --hair: #413b33; --good: #7fcbd3; --bad: #f0a970;
    --open: #d9bb62; }
}
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 72rem; padding: 2rem 1.2rem 4rem;
  background: var(--paper); color: var(--ink); line-height: 1.45;
  font-family: "Gill Sans", "Noto Sans", "DejaVu Sans", Verdana, sans-serif;
  font-size: .92rem; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .2rem; }
h2 { font-size: 1.25rem; margin: 2.6rem 0 .3rem; padding-top: .8rem;
  border-top: 3px double var(--line); }
h3 { font-size: 1rem; margin: 1.6rem 0 .4rem; }
p { margin: .2rem 0 .8rem; max-width: 46rem; color: var(--soft); }
a { color: var(--good); }
:focus-visible { outline: 3px solid var(--bad); outline-offset: 2px; }
dl { display: flex; flex-wrap: wrap; gap: 1rem 2rem; margin: 1.2rem 0 0; }
dl div { display: flex; flex-direction: column-reverse; }
dt { color: var(--soft); font-size: .82rem; }
dd { margin: 0; font-size: 1.5rem; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; white-space: nowrap; }
th, td { text-align: right; padding: .18rem .55rem; vertical-align: middle;
  border-bottom: 1px solid var(--hair); font-weight: normal;
  font-variant-numeric: tabular-nums; }
thead th { vertical-align: bottom; font-size: .8rem; color: var(--soft);
  border-bottom: 1.5px solid var(--line); }
tr > :first-child { text-align: left; padding-left: 0; min-width: 11rem; }
tbody tr:hover { background: var(--wash); }
td.chart, th.chart { text-align: left; padding: 0 .3rem; }
td.words, th.words { text-align: left; }
td.words { color: var(--soft); font-size: .84rem; white-space: normal;
  min-width: 13.5rem; line-height: 1.2; }
.few > * { color: var(--soft); }
.beside { display: flex; flex-wrap: wrap; gap: 1rem 2rem; align-items: flex-start; }
.beside figure { flex: 2 1 24rem; max-width: 46rem; }
.beside .wide { flex: 1 1 15rem; font-size: .84rem; }
.beside tr > :first-child { min-width: 6rem; }
summary { cursor: pointer; list-style: none; }
summary::after { content: " \22EF"; color: var(--line); }
details[open] summary { font-weight: bold; }
details p { white-space: normal; width: 16rem; margin: .1rem 0 .4rem;
  font-size: .84rem; }
svg { display: block; overflow: visible; }
svg text { font-size: 11px; fill: var(--soft); }
figure { margin: 0; }
figcaption { font-size: .84rem; color: var(--soft); }
figcaption b { color: var(--ink); display: block; font-size: .92rem; }
.small { display: grid; gap: 1.2rem 1.4rem; list-style: none; padding: 0;
  margin: .4rem 0; grid-template-columns: repeat(auto-fill, minmax(14rem, 1fr)); }
.axis { stroke: var(--line); }
.grid { stroke: var(--hair); }
.reach { stroke-width: 3; stroke-linecap: round; opacity: .55; }
.reach.earned { stroke: var(--good); } .mark.earned { fill: var(--good); }
.reach.harmful { stroke: var(--bad); } .mark.harmful { fill: var(--bad); }
.reach.unsure { stroke: var(--open); }
.mark.unsure { fill: var(--paper); stroke: var(--open); stroke-width: 2; }
.size { fill: none; stroke: var(--soft); stroke-width: 1.4; }
.least { fill: var(--good); }
.expected { fill: none; stroke: var(--ink); stroke-dasharray: 5 4;
  stroke-width: 1.3; }
.own { fill: none; stroke: var(--bad); stroke-width: 1.3; }
.actual { fill: var(--good); opacity: .75; }
.bar { fill: var(--good); opacity: .75; }
@media (max-width: 44rem) {
  tr > :first-child { white-space: normal; min-width: 7.5rem; width: 7.5rem;
    line-height: 1.2; }
  .worth svg { width: 12.5rem; }
}
</style>
</head>
<body>
)";

std::string Milli(double loss) { return Fixed(1000 * loss, 2); }

std::string Cell(const std::string& text) { return "<td>" + text + "</td>"; }

std::string ChartCell(const std::string& chart,
                      const std::string& css_class = "chart") {
  return "<td class=\"" + css_class + "\">" + chart + "</td>";
}

std::string Figure(const std::string& label, const std::string& value) {
  return "<div><dt>" + label + "</dt><dd>" + value + "</dd></div>\n";
}

// A table that scrolls by itself where the page is narrow.
std::string Table(const std::string& name, const std::string& head,
                  const std::string& rows) {
  return "<div class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"" +
         name + "\">\n<table>\n<thead><tr>" + head +
         "</tr></thead>\n<tbody>\n" + rows + "</tbody>\n</table>\n</div>\n";
}

std::string Heads(const std::vector<std::string>& heads) {
  std::string out;
  for (const std::string& head : heads) {
    out += "<th scope=\"col\">" + head + "</th>";
  }
  return out;
}

std::string WorthTable(const Tally& tally, const std::string& name,
                       const std::vector<Tally::Worth>& worths) {
  const bool terms = !worths.empty() && !worths.front().companions.empty();
  const WorthAxis axis(worths);
  std::string rows;
  for (const Tally::Worth& worth : worths) {
    const Part& part = tally.PartOf(worth.part);
    rows += "<tr><td><details><summary>" + Escaped(part.title) +
            "</summary><p>" + Escaped(part.definition) + "</p></details></td>" +
            ChartCell(axis.Interval(worth), "chart worth") +
            Cell(Milli(worth.loss[Tally::kOut])) + ChartCell(SizeCurve(worth)) +
            Cell(BestFactor(worth)) + Cell(Fixed(100 * worth.fires, 1) + "%") +
            Cell(Fixed(worth.size, 1));
    if (terms) {
      rows += "<td class=\"words\">";
      if (!worth.companions.empty()) {
        const auto& companion = worth.companions[0];
        rows += Escaped(tally.PartOf(companion.part).title) + " " +
                Fixed(companion.correlation, 2);
      }
      rows += "</td>";
    }
    rows += "</tr>\n";
  }
  std::string head = Heads({name}) +
                     "<th scope=\"col\" class=\"chart worth\">worth, interval" +
                     axis.Ticks() + "</th>" +
                     Heads({"left out", "size", "best &times;", "fires", "cp"});
  if (terms) head += "<th scope=\"col\" class=\"words\">goes with</th>";
  return Table(name + "s", head, rows);
}

std::string BucketTable(const std::vector<CalibrationPoint>& points) {
  std::string rows;
  for (const CalibrationPoint& point : points) {
    rows += "<tr><th scope=\"row\">" + std::to_string(point.from) + " to " +
            std::to_string(point.to) + "</th>" +
            Cell(Fixed(point.positions, 0)) +
            Cell(Fixed(100 * point.predicted, 1) + "%") +
            Cell(Fixed(100 * point.actual, 1) + "%") + "</tr>\n";
  }
  return Table("Buckets", Heads({"score", "how many", "predicted", "actual"}),
               rows);
}

std::string SliceTable(const Tally& tally) {
  constexpr double kFullBar = 0.25;
  std::string rows;
  for (const Slice& slice : tally.slices()) {
    if (slice.scores.positions() == 0) continue;
    const SliceFigures figures = FiguresOf(slice, tally.scale());
    const double gain =
        figures.constant_loss > 0
            ? (figures.constant_loss - figures.loss) / figures.constant_loss
            : 0;
    const double more = 100 * (figures.actual - figures.predicted);
    rows += std::string(IsLarge(slice) ? "<tr>" : "<tr class=\"few\">") +
            "<th scope=\"row\">" + Escaped(slice.group) + ": " +
            Escaped(slice.name) + "</th>" +
            Cell(Fixed(slice.scores.positions(), 0)) +
            Cell(Fixed(figures.loss, 4)) +
            Cell(Fixed(figures.constant_loss, 4)) +
            ChartCell(ShareBar(gain, kFullBar)) +
            Cell(Fixed(figures.own_scale, 0)) +
            Cell(Fixed(100 * figures.miss, 1) + "%") +
            Cell((more < 0 ? "" : "+") + Fixed(more, 1) + "%") + "</tr>\n";
  }
  return Table("Slices",
               Heads({"positions with", "how many", "log loss", "a constant"}) +
                   "<th scope=\"col\" class=\"chart\">less by</th>" +
                   Heads({"own scale", "miss", "White, more"}),
               rows);
}

std::string SliceCharts(const Tally& tally, const std::string& group) {
  std::string out;
  for (const Slice& slice : tally.slices()) {
    if (slice.group != group || !IsLarge(slice)) continue;
    const SliceFigures figures = FiguresOf(slice, tally.scale());
    out += "<li><figure>" +
           SmallCalibrationChart(figures.calibration, tally.scale(),
                                 figures.own_scale) +
           "<figcaption><b>" + Escaped(slice.name) + "</b>" +
           Fixed(slice.scores.positions(), 0) + " positions, own scale " +
           Fixed(figures.own_scale, 0) + ", miss " +
           Fixed(100 * figures.miss, 1) + "%</figcaption></figure></li>\n";
  }
  if (out.empty()) return out;
  return Element("h3", "", "By " + group) + "<ul class=\"small\">\n" + out +
         "</ul>\n";
}

}  // namespace

std::string ToHtml(const Tally& tally, const std::string& source) {
  const Histogram& scores = tally.scores();
  const std::vector<CalibrationPoint> calibration =
      Calibration(scores, tally.scale(), Buckets::kFine);
  std::string out = kHead;
  out += "<main>\n<h1>What each term is worth</h1>\n" +
         Element("p", "",
                 source + "; catalogue " + std::to_string(kCatalogueVersion) +
                     ", weights " + Fingerprint(tally.weights())) +
         "<dl>\n" + Figure("positions", Fixed(scores.positions(), 0)) +
         Figure("games", std::to_string(tally.games())) +
         Figure("log loss", Fixed(scores.Loss(tally.scale()), 5)) +
         Figure("log loss of a constant", Fixed(scores.ConstantLoss(), 5)) +
         Figure("scale, centipawns", Fixed(tally.scale(), 1)) +
         Figure("mean miss of the points",
                Fixed(100 * MeanMiss(calibration), 1) + "%") +
         "</dl>\n";
  out +=
      "<h2>Themes</h2>\n<p>How much worse results are predicted, in "
      "thousandths "
      "of log loss, without the terms of a theme. The line is the 95% interval "
      "over games, on an axis that is widest at zero. A disc has earned its "
      "place on these games; a ring, whose line crosses zero, has not yet; a "
      "square does harm. The curve is the loss with less and more of the "
      "weights: where its lowest point is off the line, these games would give "
      "them another size, &ldquo;best&rdquo; times their own. Fires: the share "
      "of positions with an entry; cp: the mean size there.</p>\n" +
      WorthTable(tally, "Theme", tally.Themes());
  out +=
      "<h2>Terms</h2>\n<p>The same of each term. Terms that go together share "
      "their worth: the last column has the closest, with its "
      "correlation.</p>\n" +
      WorthTable(tally, "Term", tally.Terms());
  out +=
      "<h2>Predicted and actual</h2>\n<p>White's share of the points by score: "
      "the dashed curve is what the scale expects, each disc what happened in "
      "a bucket of scores, its area the number of positions.</p>\n"
      "<div class=\"beside\">\n<figure>" +
      CalibrationChart(calibration, tally.scale()) + "</figure>\n" +
      BucketTable(calibration) + "</div>\n";
  out +=
      "<h2>Where scores promise too much or too little</h2>\n<p>Losses and the "
      "dashed curves have the scale of all positions. A slice's own scale, its "
      "solid curve, is the one with the least loss there: where it is larger, "
      "scores promise too much. Miss is how far predicted is from actual in "
      "the mean; the last column, what White got beyond what was "
      "predicted. Slices of few positions are set in grey.</p>\n" +
      SliceTable(tally);
  for (const std::string group :
       {"phase", "centre", "material", "equal material", "structure"}) {
    out += SliceCharts(tally, group);
  }
  return out + "</main>\n</body>\n</html>\n";
}

}  // namespace assay::bench
