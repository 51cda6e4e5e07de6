// Each step is a bar from where the one before ended. White's way is to the
// right; Black's steps are hollow, so that the direction can be read without
// colour, and each has its words and figure beside it.
#include "assay/lesson/waterfall.h"

#include <algorithm>
#include <cstdio>
#include <vector>

#include "assay/explain/text.h"
#include "assay/lesson/markup.h"

namespace assay {
namespace {

struct Step {
  std::string words;
  Centipawns value_cp = 0;
};

std::vector<Step> StepsOf(const Explanation& explanation,
                          const Catalogue& words) {
  std::vector<Step> steps;
  Centipawns rest = explanation.score_cp;
  for (const Reason& reason : explanation.reasons) {
    steps.push_back({words.Text(Say("entry", reason.favours(), reason.phrase)),
                     reason.value_cp});
    rest -= reason.value_cp;
  }
  if (rest != 0) steps.push_back({words.Text(Say("waterfall.rest")), rest});
  return steps;
}

// The bars' common scale: 300 units from the lowest to the highest total.
struct Axis {
  int low = 0;
  int high = 0;

  double At(int value) const {
    return 6 + 288.0 * (value - low) / std::max(1, high - low);
  }
};

std::string Number(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f", value);
  return text;
}

std::string Line(double x, const char* css_class) {
  return std::string("<line class=\"") + css_class + "\" x1=\"" + Number(x) +
         "\" x2=\"" + Number(x) + "\" y1=\"0\" y2=\"24\"/>";
}

std::string Row(const std::string& words, const std::string& figure,
                const std::string& drawing) {
  return "<li><span class=\"what\">" + Escaped(words) +
         "</span> <span class=\"figure\">" + figure +
         "</span> <svg viewBox=\"0 0 300 24\" preserveAspectRatio=\"none\" "
         "aria-hidden=\"true\" focusable=\"false\">" +
         drawing + "</svg></li>\n";
}

}  // namespace

std::string Waterfall(const Explanation& explanation, const Catalogue& words) {
  const std::vector<Step> steps = StepsOf(explanation, words);
  Axis axis;
  int total = 0;
  for (const Step& step : steps) {
    total += step.value_cp;
    axis.low = std::min(axis.low, total);
    axis.high = std::max(axis.high, total);
  }
  // A lone small step does not fill the whole width: half a pawn at least.
  axis.high = std::max(axis.high, axis.low + 50);
  std::string text = "<ol class=\"waterfall\">\n";
  int at = 0;
  for (const Step& step : steps) {
    const double from = axis.At(at);
    const double to = axis.At(at + step.value_cp);
    const std::string bar = std::string("<rect class=\"") +
                            (step.value_cp > 0 ? "for-white" : "for-black") +
                            "\" x=\"" + Number(std::min(from, to)) +
                            "\" width=\"" +
                            Number(std::max(1.5, std::abs(to - from))) +
                            "\" y=\"4\" height=\"16\"/>";
    text += Row(step.words, PawnsText(step.value_cp),
                Line(axis.At(0), "zero") + bar + Line(to, "total"));
    at += step.value_cp;
  }
  const double end = axis.At(at);
  text += Row(words.Text(Say("waterfall.score")), PawnsText(at),
              Line(axis.At(0), "zero") + "<path class=\"end\" d=\"M" +
                  Number(end) + " 2l6 10-6 10-6-10z\"/>");
  return text + "</ol>\n";
}

}  // namespace assay
