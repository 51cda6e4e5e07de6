// A student's report for readers: as text, and as a sheet.
#include <cstdio>

#include "assay/explain/words.h"
#include "assay/lesson/diagram.h"
#include "assay/lesson/handout_style.h"
#include "assay/lesson/markup.h"
#include "assay/lesson/student.h"
#include "assay/notation/fen.h"

namespace assay {
namespace {

// "3.4 %".
std::string Percent(double share) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f %%", 100 * share);
  return text;
}

std::string CountText(const Habit& habit, const char* of) {
  return std::to_string(habit.own.count) + " times in " +
         std::to_string(habit.own.chances) + " " + of + ": " +
         Percent(habit.own.share()) + ", between " +
         Percent(habit.interval.low) + " and " + Percent(habit.interval.high) +
         "; the opponents in the same games " + Percent(habit.others.share());
}

std::string StructuresText(const Habit& habit) {
  std::vector<std::string> parts;
  for (const auto& structure : habit.structures) {
    parts.push_back(structure.first + " " + std::to_string(structure.second));
  }
  return "Where: " + Join(parts) + ".";
}

std::string IntroText(const StudentReport& report, std::string_view name) {
  return std::string(name) + ": " + std::to_string(report.games) +
         (report.games == 1 ? " game, " : " games, ") +
         std::to_string(report.moves) + " moves looked at.";
}

constexpr const char* kNoConcession =
    "Nothing is conceded more often than the opponents concede it.";
constexpr const char* kNoIgnored =
    "No kind of plan is let happen more often than the opponents let it.";

std::string HabitsText(const std::vector<Habit>& habits, const char* of,
                       const char* none) {
  if (habits.empty()) return "  " + std::string(none) + "\n";
  std::string text;
  for (const Habit& habit : habits) {
    text += "  " + habit.name + ": " + CountText(habit, of) + "\n    " +
            StructuresText(habit) + "\n";
    for (const HabitPlace& place : habit.clearest) {
      text += "    " + place.where + "\n      " + ToFen(place.position) +
              "\n      " + place.text + "\n";
    }
  }
  return text;
}

std::string HabitsHtml(const std::vector<Habit>& habits, const char* of,
                       const char* none) {
  if (habits.empty()) return Element("p", "", none);
  std::string html;
  for (const Habit& habit : habits) {
    html += Element("h3", "", habit.name) +
            Element("p", "", CountText(habit, of) + ".") +
            Element("p", "", StructuresText(habit)) + "<ol class=\"quiz\">\n";
    for (const HabitPlace& place : habit.clearest) {
      html += "<li>" + Diagram(place.position, {}) +
              Element("p", "because", place.where) +
              Element("p", "", place.text) + "</li>\n";
    }
    html += "</ol>\n";
  }
  return html;
}

}  // namespace

std::string ToText(const StudentReport& report, std::string_view name) {
  return IntroText(report, name) + "\nConceded again and again\n" +
         HabitsText(report.concessions, "moves", kNoConcession) +
         "Plans of the opponent let happen\n" +
         HabitsText(report.ignored, "such plans", kNoIgnored);
}

std::string StudentHandout(const StudentReport& report, std::string_view name) {
  const std::string title = "Games of " + std::string(name);
  return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n"
         "<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
         "content=\"width=device-width, initial-scale=1\">\n" +
         Element("title", "", title) + "<style>" + std::string(HandoutStyle()) +
         "</style>\n</head>\n<body>\n" + DiagramDefinitions() + "<header>\n" +
         Element("h1", "", title) + Element("p", "", IntroText(report, name)) +
         "</header>\n<main>\n" + Element("h2", "", "Conceded again and again") +
         HabitsHtml(report.concessions, "moves", kNoConcession) +
         Element("h2", "", "Plans of the opponent let happen") +
         HabitsHtml(report.ignored, "such plans", kNoIgnored) +
         "</main>\n</body>\n</html>\n";
}

}  // namespace assay
