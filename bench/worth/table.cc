#include <algorithm>

#include "bench/format.h"
#include "bench/worth/report.h"

namespace assay::bench {
namespace {

// Losses in units of a thousandth.
std::string Milli(double loss) { return Fixed(1000 * loss, 2); }

void AppendWorths(const Tally& tally, const std::string& heading,
                  const std::vector<Tally::Worth>& worths, std::string& out) {
  out += "\n" + Left(heading, 22) + Right("fires", 7) + Right("cp", 7) +
         Right("out", 8) + Right("interval", 16) + Right("half", 8) +
         Right("more", 8) + Right("best", 7) + "  goes with\n";
  for (const Tally::Worth& worth : worths) {
    out += Left(tally.PartOf(worth.part).name, 22) +
           Right(Fixed(100 * worth.fires, 1) + "%", 7) +
           Right(Fixed(worth.size, 1), 7) +
           Right(Milli(worth.loss[Tally::kOut]), 8) +
           Right(Milli(worth.low) + ".." + Milli(worth.high), 16) +
           Right(Milli(worth.loss[Tally::kHalf]), 8) +
           Right(Milli(worth.loss[Tally::kMore]), 8) +
           Right(BestFactor(worth), 7);
    if (!worth.companions.empty()) {
      out += "  " + tally.PartOf(worth.companions[0].part).name + " " +
             Fixed(worth.companions[0].correlation, 2);
    }
    out += "\n";
  }
}

void AppendSlices(const Tally& tally, std::string& out) {
  const double scale = tally.scale();
  out +=
      "\nThe scale is that of all positions; own: the slice's own scale. "
      "Miss: predicted\nagainst actual points in the mean, in percent; for "
      "White: actual less predicted.\n";
  out += Left("slice", 44) + Right("positions", 10) + Right("loss", 9) +
         Right("constant", 10) + Right("own scale", 11) + Right("miss", 7) +
         Right("for White", 11) + "\n";
  for (const Slice& slice : tally.slices()) {
    if (slice.scores.positions() == 0) continue;
    const SliceFigures figures = FiguresOf(slice, scale);
    out += Left(slice.group + ": " + slice.name, 44) +
           Right(Fixed(slice.scores.positions(), 0), 10) +
           Right(Fixed(figures.loss, 5), 9) +
           Right(Fixed(figures.constant_loss, 5), 10) +
           Right(Fixed(figures.own_scale, 1), 11) +
           Right(Fixed(100 * figures.miss, 1), 7) +
           Right(Fixed(100 * (figures.actual - figures.predicted), 1), 11) +
           "\n";
  }
}

// A column a slice: how much more (or less) White got than predicted, by score.
void AppendCalibrations(const Tally& tally, const std::string& group,
                        std::string& out) {
  std::vector<const Slice*> shown;
  for (const Slice& slice : tally.slices()) {
    if (slice.group == group && IsLarge(slice)) shown.push_back(&slice);
  }
  if (shown.empty()) return;
  std::size_t width = 0;
  for (const Slice* slice : shown) width = std::max(width, slice->name.size());
  width += 2;
  out += "\n" + Left(group + ", score", 26);
  for (const Slice* slice : shown) out += Right(slice->name, width);
  out += "\n";
  std::vector<std::vector<CalibrationPoint>> columns;
  columns.reserve(shown.size());
  for (const Slice* slice : shown) {
    columns.push_back(
        Calibration(slice->scores, tally.scale(), Buckets::kCoarse));
  }
  std::vector<int> starts = CoarseEdges();
  starts.insert(starts.begin(), -Histogram::kLimit);
  for (const int from : starts) {
    std::string row;
    std::string label;
    for (const std::vector<CalibrationPoint>& column : columns) {
      const auto point =
          std::find_if(column.begin(), column.end(),
                       [&](const auto& each) { return each.from == from; });
      if (point == column.end()) {
        row += Right(".", width);
        continue;
      }
      label = std::to_string(point->from) + " to " + std::to_string(point->to);
      const double more = 100 * (point->actual - point->predicted);
      row += Right((more < 0 ? "" : "+") + Fixed(more, 1), width);
    }
    if (!label.empty()) out += Left(label, 26) + row + "\n";
  }
}

}  // namespace

std::string BestFactor(const Tally::Worth& worth) {
  constexpr double kFarthest = 3;
  if (worth.best_factor == 0) return "-";
  return Fixed(std::clamp(worth.best_factor, 0.0, kFarthest), 2);
}

bool IsLarge(const Slice& slice) {
  constexpr double kLarge = 1000;
  return slice.scores.positions() >= kLarge;
}

SliceFigures FiguresOf(const Slice& slice, double scale) {
  SliceFigures figures;
  const Histogram& scores = slice.scores;
  const Histogram::Bucket all =
      scores.Sum(-Histogram::kLimit, Histogram::kLimit, scale);
  figures.loss = scores.Loss(scale);
  figures.constant_loss = scores.ConstantLoss();
  figures.own_scale = scores.BestScale();
  figures.loss_at_own_scale = scores.Loss(figures.own_scale);
  figures.predicted = all.expected / all.positions;
  figures.actual = all.points / all.positions;
  figures.calibration = Calibration(scores, scale, Buckets::kCoarse);
  figures.miss = MeanMiss(figures.calibration);
  return figures;
}

std::string ToTable(const Tally& tally, const std::string& source) {
  const double scale = tally.scale();
  const std::vector<CalibrationPoint> calibration =
      Calibration(tally.scores(), scale, Buckets::kFine);
  std::string out =
      source + ": " + Fixed(tally.scores().positions(), 0) + " positions of " +
      std::to_string(tally.games()) + " games\nlog loss " +
      Fixed(tally.scores().Loss(scale), 5) + " at a scale of " +
      Fixed(scale, 1) +
      " centipawns (a constant: " + Fixed(tally.scores().ConstantLoss(), 5) +
      ")\n\n";
  out +=
      "Loss in thousandths: what leaving the term out costs (95% interval over "
      "games),\nand what half of its weights and half as much again would. "
      "Best: by how much they\nwould be multiplied at the least loss.\n";
  AppendWorths(tally, "theme", tally.Themes(), out);
  AppendWorths(tally, "term", tally.Terms(), out);
  AppendSlices(tally, out);
  out += "\n" + Left("score", 16) + Right("positions", 10) +
         Right("predicted", 11) + Right("actual", 8) + "\n";
  for (const CalibrationPoint& point : calibration) {
    out += Left(std::to_string(point.from) + " to " + std::to_string(point.to),
                16) +
           Right(Fixed(point.positions, 0), 10) +
           Right(Fixed(point.predicted, 3), 11) +
           Right(Fixed(point.actual, 3), 8) + "\n";
  }
  out += "mean miss " + Fixed(100 * MeanMiss(calibration), 1) +
         " percent of the points\n\nWhite's points less those predicted, in "
         "percent:\n";
  for (const std::string group :
       {"phase", "centre", "material", "equal material", "structure"}) {
    AppendCalibrations(tally, group, out);
  }
  return out;
}

}  // namespace assay::bench
