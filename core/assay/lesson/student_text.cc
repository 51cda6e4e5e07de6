// A student's report for readers: as text, and as a sheet.
#include <cstdio>

#include "assay/lesson/diagram.h"
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

// Habits of one kind: what they are called, what they are counted by, and what
// is said where there are none.
struct Chapter {
  const std::vector<Habit>& habits;
  Message heading;
  Message chances;
  Message none;
};

class Teller {
 public:
  Teller(const StudentReport& report, const std::string& name,
         const Catalogue& words)
      : report_(report), name_(name), words_(words) {}

  std::string Text() const {
    std::string text = Intro() + "\n";
    for (const Chapter& chapter : Chapters()) {
      text += words_.Text(chapter.heading) + "\n";
      if (chapter.habits.empty()) {
        text += "  " + words_.Text(chapter.none) + "\n";
      }
      for (const Habit& habit : chapter.habits) {
        text += "  " + habit.name + ": " +
                words_.Text(CountSaid(habit, chapter.chances)) + "\n    " +
                Structures(habit) + "\n";
        for (const HabitPlace& place : habit.clearest) {
          text += "    " + place.where + "\n      " + ToFen(place.position) +
                  "\n      " + place.text + "\n";
        }
      }
    }
    return text;
  }

  std::string Sheet(Paper paper) const {
    const std::string title = words_.Text(Say("student.title", name_));
    std::string html =
        "<!DOCTYPE html>\n<html lang=\"" +
        words_.Text(Say("handout.language")) +
        "\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
        "content=\"width=device-width, initial-scale=1\">\n" +
        Element("title", "", title) + "<style>" + HandoutStyle(paper) +
        "</style>\n</head>\n<body>\n" + DiagramDefinitions() + "<header>\n" +
        Element("h1", "", title) + Element("p", "", Intro()) +
        "</header>\n<main>\n";
    for (const Chapter& chapter : Chapters()) {
      html += Element("h2", "", words_.Text(chapter.heading));
      if (chapter.habits.empty()) {
        html += Element("p", "", words_.Text(chapter.none));
      }
      for (const Habit& habit : chapter.habits) html += Html(habit, chapter);
    }
    return html + "</main>\n</body>\n</html>\n";
  }

 private:
  std::vector<Chapter> Chapters() const {
    return {{report_.concessions, Say("student.conceded"), Say("student.moves"),
             Say("student.no_concession")},
            {report_.ignored, Say("student.let"), Say("student.such_plans"),
             Say("student.no_plan")}};
  }

  std::string Intro() const {
    return words_.Text(Say("student.intro", name_,
                           static_cast<int>(report_.games),
                           static_cast<int>(report_.moves)));
  }

  static Message CountSaid(const Habit& habit, const Message& chances) {
    return Say("student.count", static_cast<int>(habit.own.count),
               static_cast<int>(habit.own.chances), chances,
               Percent(habit.own.share()), Percent(habit.interval.low),
               Percent(habit.interval.high), Percent(habit.others.share()));
  }

  std::string Structures(const Habit& habit) const {
    std::vector<Message> parts;
    for (const auto& structure : habit.structures) {
      parts.push_back(
          Moves(structure.first + " " + std::to_string(structure.second)));
    }
    return words_.Text(Sentence(Say("student.where", And(std::move(parts)))));
  }

  std::string Html(const Habit& habit, const Chapter& chapter) const {
    std::string html =
        Element("h3", "", habit.name) +
        Element("p", "",
                words_.Text(Sentence(CountSaid(habit, chapter.chances)))) +
        Element("p", "", Structures(habit)) + "<ol class=\"quiz\">\n";
    for (const HabitPlace& place : habit.clearest) {
      html += "<li>" + Diagram(place.position, {}, words_) +
              Element("p", "because", place.where) +
              Element("p", "", place.text) + "</li>\n";
    }
    return html + "</ol>\n";
  }

  const StudentReport& report_;
  const std::string& name_;
  const Catalogue& words_;
};

}  // namespace

std::string ToText(const StudentReport& report, const std::string& name,
                   const Catalogue& words) {
  return Teller(report, name, words).Text();
}

std::string StudentHandout(const StudentReport& report, const std::string& name,
                           const Catalogue& words, Paper paper) {
  return Teller(report, name, words).Sheet(paper);
}

}  // namespace assay
