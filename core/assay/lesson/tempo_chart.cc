#include "assay/lesson/tempo_chart.h"

#include <algorithm>

#include "assay/explain/words.h"
#include "assay/lesson/markup.h"

namespace assay {
namespace {

std::string Row(const ToldPlan& plan, std::size_t columns,
                const Catalogue& words) {
  const Side side = plan.plan.side;
  std::string text = std::string("<tr class=\"") +
                     (side == Side::kWhite ? "white " : "black ") +
                     Name(plan.plan.standing) + "\"><th scope=\"row\">" +
                     Escaped(words.Text(Say("entry", side, plan.title_said))) +
                     "</th>";
  for (std::size_t i = 0; i < columns; ++i) {
    if (i < plan.steps.size()) {
      const bool last = i + 1 == plan.steps.size();
      text += std::string("<td><span class=\"step") + (last ? " goal" : "") +
              "\">" + Escaped(NamedMove(side, plan.steps[i].san)) +
              "</span></td>";
    } else {
      text += "<td></td>";
    }
  }
  return text + "<td class=\"standing\">" + Escaped(StandingText(plan, words)) +
         "</td></tr>\n";
}

}  // namespace

std::string StandingText(const ToldPlan& plan, const Catalogue& words) {
  const std::string answer =
      plan.counter.empty()
          ? ""
          : NamedMove(Other(plan.plan.side), plan.counter.front().san);
  switch (plan.plan.standing) {
    case Standing::kInTime:
      return words.Text(Say("race.in_time", answer));
    case Standing::kSlow:
      return words.Text(Say("race.too_slow"));
    case Standing::kStopped:
      return words.Text(Say("race.stopped", answer));
    case Standing::kNeeds:
      break;
  }
  return words.Text(Say("race.needs", plan.needs_said));
}

std::string TempoChart(const Explanation& explanation, const Catalogue& words) {
  if (explanation.plans.empty()) return "";
  // The same axis for short plans as for long ones, as far as it goes.
  std::size_t columns = 4;
  for (const ToldPlan& plan : explanation.plans) {
    columns = std::max(columns, plan.steps.size());
  }
  const auto label = [&words](std::string_view id) {
    return Escaped(words.Text(Say(id)));
  };
  std::string text =
      "<div class=\"scroll\" role=\"group\" tabindex=\"0\" "
      "aria-label=\"" +
      label("race.caption") +
      "\">\n<table class=\"race\">\n<thead><tr><th scope=\"col\">" +
      label("race.own_moves") + "</th>";
  for (std::size_t i = 0; i < columns; ++i) {
    text +=
        "<th scope=\"col\" class=\"tempo\">" + std::to_string(i + 1) + "</th>";
  }
  text += "<th scope=\"col\">" + label("race.standing") +
          "</th></tr></thead>\n<tbody>\n";
  for (const ToldPlan& plan : explanation.plans)
    text += Row(plan, columns, words);
  return text + "</tbody></table></div>\n";
}

}  // namespace assay
