#include "bench/worth/report.h"

#include <cmath>
#include <cstdio>

namespace assay::bench {
namespace {

// Scores of one bucket of the calibration, and how far it goes.
constexpr int kBucket = 50;
constexpr int kFarthest = 600;
constexpr double kFewest = 30;

std::string Fixed(double value, int digits) {
  char text[64];
  std::snprintf(text, sizeof text, "%.*f", digits, value);
  return text;
}

// Losses in units of a thousandth.
std::string Milli(double loss) { return Fixed(1000 * loss, 2); }

std::string Padded(const std::string& text, std::size_t width, bool left) {
  if (text.size() >= width) return text;
  const std::string blanks(width - text.size(), ' ');
  return left ? text + blanks : blanks + text;
}

std::string Escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (static_cast<unsigned char>(c) < 0x20) {
      out += ' ';
    } else {
      out += c;
    }
  }
  return out;
}

std::string Quote(std::string_view text) {
  return "\"" + Escaped(std::string(text)) + "\"";
}

}  // namespace

std::vector<CalibrationPoint> Calibration(const Histogram& scores,
                                          double scale) {
  std::vector<CalibrationPoint> points;
  const auto add = [&](int from, int to) {
    const Histogram::Bucket bucket = scores.Sum(from, to, scale);
    if (bucket.positions < kFewest) return;
    points.push_back({from, to, bucket.positions,
                      bucket.expected / bucket.positions,
                      bucket.points / bucket.positions});
  };
  add(-Histogram::kLimit, -kFarthest - 1);
  for (int from = -kFarthest; from < kFarthest; from += kBucket) {
    add(from, from + kBucket - 1);
  }
  add(kFarthest, Histogram::kLimit);
  return points;
}

std::string ToTable(const Tally& tally, const std::string& source) {
  const double scale = tally.scale();
  std::string out =
      source + ": " + Fixed(tally.scores().positions(), 0) + " positions of " +
      std::to_string(tally.games()) + " games\nlog loss " +
      Fixed(tally.scores().Loss(scale), 5) + " at a scale of " +
      Fixed(scale, 1) +
      " centipawns (a constant: " + Fixed(tally.scores().ConstantLoss(), 5) +
      ")\n\n";
  out +=
      "Loss in thousandths: what leaving the term out costs (95% interval over "
      "games),\nand what half of its weights and half as much again would.\n";
  out += Padded("term", 22, true) + Padded("fires", 7, false) +
         Padded("cp", 7, false) + Padded("out", 8, false) +
         Padded("interval", 16, false) + Padded("half", 8, false) +
         Padded("more", 8, false) + "  goes with\n";
  for (const Tally::TermWorth& term : tally.Terms()) {
    out += Padded(std::string(Info(term.id).name), 22, true) +
           Padded(Fixed(100 * term.fires, 1) + "%", 7, false) +
           Padded(Fixed(term.size, 1), 7, false) +
           Padded(Milli(term.loss[Tally::kOut]), 8, false) +
           Padded(Milli(term.low) + ".." + Milli(term.high), 16, false) +
           Padded(Milli(term.loss[Tally::kHalf]), 8, false) +
           Padded(Milli(term.loss[Tally::kMore]), 8, false);
    if (!term.companions.empty()) {
      out += "  " + std::string(Info(term.companions[0].id).name) + " " +
             Fixed(term.companions[0].correlation, 2);
    }
    out += "\n";
  }
  out += "\n" + Padded("slice", 26, true) + Padded("positions", 10, false) +
         Padded("loss", 9, false) + Padded("constant", 10, false) + "\n";
  for (const Slice& slice : tally.slices()) {
    if (slice.scores.positions() == 0) continue;
    out += Padded(slice.group + ": " + slice.name, 26, true) +
           Padded(Fixed(slice.scores.positions(), 0), 10, false) +
           Padded(Fixed(slice.scores.Loss(scale), 5), 9, false) +
           Padded(Fixed(slice.scores.ConstantLoss(), 5), 10, false) + "\n";
  }
  out += "\n" + Padded("score", 16, true) + Padded("positions", 10, false) +
         Padded("predicted", 11, false) + Padded("actual", 8, false) + "\n";
  for (const CalibrationPoint& point : Calibration(tally.scores(), scale)) {
    out +=
        Padded(std::to_string(point.from) + " to " + std::to_string(point.to),
               16, true) +
        Padded(Fixed(point.positions, 0), 10, false) +
        Padded(Fixed(point.predicted, 3), 11, false) +
        Padded(Fixed(point.actual, 3), 8, false) + "\n";
  }
  return out;
}

std::string ToJson(const Tally& tally, const std::string& source) {
  const double scale = tally.scale();
  std::string out =
      "{\"source\": " + Quote(source) +
      ", \"catalogueVersion\": " + std::to_string(kCatalogueVersion) +
      ", \"weights\": " + Quote(Fingerprint(tally.weights())) +
      ", \"positions\": " + Fixed(tally.scores().positions(), 0) +
      ", \"games\": " + std::to_string(tally.games()) +
      ", \"loss\": " + Fixed(tally.scores().Loss(scale), 6) +
      ", \"scaleCp\": " + Fixed(scale, 2) +
      ", \"constantLoss\": " + Fixed(tally.scores().ConstantLoss(), 6) +
      ",\n\"terms\": [";
  const char* comma = "\n";
  for (const Tally::TermWorth& term : tally.Terms()) {
    out += comma;
    out += "{\"term\": " + Quote(Info(term.id).name) +
           ", \"fires\": " + Fixed(term.fires, 5) +
           ", \"entries\": " + Fixed(term.entries, 4) +
           ", \"meanCp\": " + Fixed(term.size, 2) +
           ", \"lossLeftOut\": " + Fixed(term.loss[Tally::kOut], 7) +
           ", \"lossLeftOutLow\": " + Fixed(term.low, 7) +
           ", \"lossLeftOutHigh\": " + Fixed(term.high, 7) +
           ", \"lossHalved\": " + Fixed(term.loss[Tally::kHalf], 7) +
           ", \"lossHalfAgain\": " + Fixed(term.loss[Tally::kMore], 7) +
           ", \"correlations\": {";
    const char* next = "";
    for (const auto& companion : term.companions) {
      out += next + Quote(Info(companion.id).name) + ": " +
             Fixed(companion.correlation, 3);
      next = ", ";
    }
    out += "}}";
    comma = ",\n";
  }
  out += "],\n\"slices\": [";
  comma = "\n";
  for (const Slice& slice : tally.slices()) {
    if (slice.scores.positions() == 0) continue;
    out += comma;
    out += "{\"group\": " + Quote(slice.group) +
           ", \"name\": " + Quote(slice.name) +
           ", \"positions\": " + Fixed(slice.scores.positions(), 0) +
           ", \"loss\": " + Fixed(slice.scores.Loss(scale), 6) +
           ", \"constantLoss\": " + Fixed(slice.scores.ConstantLoss(), 6) + "}";
    comma = ",\n";
  }
  out += "],\n\"calibration\": [";
  comma = "\n";
  for (const CalibrationPoint& point : Calibration(tally.scores(), scale)) {
    out += comma;
    out += "{\"from\": " + std::to_string(point.from) +
           ", \"to\": " + std::to_string(point.to) +
           ", \"positions\": " + Fixed(point.positions, 0) +
           ", \"predicted\": " + Fixed(point.predicted, 5) +
           ", \"actual\": " + Fixed(point.actual, 5) + "}";
    comma = ",\n";
  }
  return out + "]}\n";
}

}  // namespace assay::bench
