#include "assay/terms/weights_text.h"
#include "bench/format.h"
#include "bench/worth/report.h"

namespace assay::bench {
namespace {

// `items` between brackets, one a line, each written by `write`.
template <class Items, class Write>
std::string Array(const Items& items, const Write& write) {
  std::string out = "[";
  const char* comma = "\n";
  for (const auto& item : items) {
    out += comma + write(item);
    comma = ",\n";
  }
  return out + "]";
}

std::string ToJson(const Tally& tally, const Tally::Worth& worth) {
  const Part& part = tally.PartOf(worth.part);
  std::string out =
      "{\"name\": " + Quoted(part.name) + ", \"title\": " + Quoted(part.title) +
      ", \"theme\": " + (part.theme.empty() ? "null" : Quoted(part.theme)) +
      ", \"fires\": " + Fixed(worth.fires, 5) +
      ", \"entries\": " + Fixed(worth.entries, 4) +
      ", \"meanCp\": " + Fixed(worth.size, 2) +
      ", \"lossLeftOut\": " + Fixed(worth.loss[Tally::kOut], 7) +
      ", \"lossLeftOutLow\": " + Fixed(worth.low, 7) +
      ", \"lossLeftOutHigh\": " + Fixed(worth.high, 7) +
      ", \"lossHalved\": " + Fixed(worth.loss[Tally::kHalf], 7) +
      ", \"lossHalfAgain\": " + Fixed(worth.loss[Tally::kMore], 7) +
      ", \"bestFactor\": " +
      (worth.best_factor == 0 ? "null" : Fixed(worth.best_factor, 3)) +
      ", \"correlations\": {";
  const char* comma = "";
  for (const auto& companion : worth.companions) {
    out += comma + Quoted(tally.PartOf(companion.part).name) + ": " +
           Fixed(companion.correlation, 3);
    comma = ", ";
  }
  return out + "}}";
}

std::string ToJson(const CalibrationPoint& point) {
  return "{\"from\": " + std::to_string(point.from) +
         ", \"to\": " + std::to_string(point.to) +
         ", \"positions\": " + Fixed(point.positions, 0) +
         ", \"predicted\": " + Fixed(point.predicted, 5) +
         ", \"actual\": " + Fixed(point.actual, 5) + "}";
}

std::string ToJson(const std::vector<CalibrationPoint>& points) {
  return Array(points,
               [](const CalibrationPoint& point) { return ToJson(point); });
}

std::string ToJson(const Slice& slice, double scale) {
  const SliceFigures figures = FiguresOf(slice, scale);
  return "{\"group\": " + Quoted(slice.group) +
         ", \"name\": " + Quoted(slice.name) +
         ", \"positions\": " + Fixed(slice.scores.positions(), 0) +
         ", \"loss\": " + Fixed(figures.loss, 6) +
         ", \"constantLoss\": " + Fixed(figures.constant_loss, 6) +
         ", \"ownScaleCp\": " + Fixed(figures.own_scale, 2) +
         ", \"lossAtOwnScale\": " + Fixed(figures.loss_at_own_scale, 6) +
         ", \"predicted\": " + Fixed(figures.predicted, 5) +
         ", \"actual\": " + Fixed(figures.actual, 5) +
         ", \"meanMiss\": " + Fixed(figures.miss, 5) +
         ",\n\"calibration\": " + ToJson(figures.calibration) + "}";
}

}  // namespace

std::string ToJson(const Tally& tally, const std::string& source) {
  const double scale = tally.scale();
  const auto worth = [&](const Tally::Worth& each) {
    return ToJson(tally, each);
  };
  std::vector<Slice> slices;
  for (const Slice& slice : tally.slices()) {
    if (slice.scores.positions() > 0) slices.push_back(slice);
  }
  return "{\"source\": " + Quoted(source) +
         ", \"catalogueVersion\": " + std::to_string(kCatalogueVersion) +
         ", \"weights\": " + Quoted(Fingerprint(tally.weights())) +
         ", \"positions\": " + Fixed(tally.scores().positions(), 0) +
         ", \"games\": " + std::to_string(tally.games()) +
         ", \"loss\": " + Fixed(tally.scores().Loss(scale), 6) +
         ", \"scaleCp\": " + Fixed(scale, 2) +
         ", \"constantLoss\": " + Fixed(tally.scores().ConstantLoss(), 6) +
         ",\n\"themes\": " + Array(tally.Themes(), worth) +
         ",\n\"terms\": " + Array(tally.Terms(), worth) + ",\n\"slices\": " +
         Array(slices,
               [&](const Slice& slice) { return ToJson(slice, scale); }) +
         ",\n\"calibration\": " +
         ToJson(Calibration(tally.scores(), scale, Buckets::kFine)) + "}\n";
}

}  // namespace assay::bench
