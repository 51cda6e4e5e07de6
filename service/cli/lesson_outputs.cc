#include "service/cli/lesson_outputs.h"

#include <functional>
#include <vector>

#include "assay/lesson/markup.h"
#include "assay/lesson/own_comments.h"
#include "service/cli/lesson_record.h"

namespace assay::service {
namespace {

// Each record with the task that it came of.
void ForEach(
    const Lesson& lesson, const std::string& journal,
    const std::function<void(const LessonTask&, LessonRecord&)>& visit) {
  LessonTasks tasks(lesson);
  JournalReader reader(journal);
  LessonTask task;
  Fields fields;
  while (tasks.Next(task) && reader.Next(fields)) {
    LessonRecord record = FromFields(fields);
    visit(task, record);
  }
}

// The verdicts from the first key position of a line to its last.
std::string StepsTo(std::size_t index, const std::vector<std::string>& places,
                    const std::vector<std::string>& verdicts,
                    const std::vector<std::ptrdiff_t>& previous,
                    const Catalogue& words) {
  // What came long before is told at its own place.
  constexpr std::size_t kMostSteps = 6;
  std::vector<VerdictStepText> steps;
  for (auto i = static_cast<std::ptrdiff_t>(index);
       i >= 0 && steps.size() < kMostSteps;
       i = previous[static_cast<std::size_t>(i)]) {
    const auto at = static_cast<std::size_t>(i);
    steps.insert(steps.begin(), {places[at], verdicts[at]});
  }
  return HandoutVerdictSteps(steps, words);
}

}  // namespace

void WriteItems(const std::string& journal, std::ostream& out) {
  JournalReader reader(journal);
  Fields fields;
  while (reader.Next(fields)) out << FromFields(fields).json;
}

void WriteAnnotated(const Lesson& lesson, const std::string& journal,
                    std::ostream& out) {
  const std::string& text = lesson.text();
  const std::string_view line_end = LineEndOf(text);
  std::uint64_t at = 0;
  ForEach(lesson, journal, [&](const LessonTask& task, LessonRecord& record) {
    if (record.words.empty()) return;
    const KeyPosition& key = task.game->keys[task.key];
    for (const Insertion& insertion : InsertionsAt(
             task.game->item, key.node, record.nag, record.words, line_end)) {
      if (insertion.offset < at || insertion.offset > text.size()) continue;
      out.write(text.data() + at,
                static_cast<std::streamsize>(insertion.offset - at));
      out << insertion.text;
      at = insertion.offset;
    }
  });
  out.write(text.data() + at, static_cast<std::streamsize>(text.size() - at));
}

void WriteHandout(const Lesson& lesson, const std::string& journal,
                  const HandoutTitle& title, const Catalogue& words,
                  std::ostream& out) {
  const Message origin =
      Say("lesson.origin", title.origin, static_cast<int>(lesson.games()),
          static_cast<int>(lesson.size()));
  out << HandoutOpening({title.title, words.Text(origin), title.paper}, words);
  std::vector<std::string> places;
  std::vector<std::string> verdicts;
  std::vector<std::ptrdiff_t> previous;
  std::uint32_t last_game = ~std::uint32_t{0};
  ForEach(lesson, journal, [&](const LessonTask& task, LessonRecord& record) {
    if (record.failed) {
      out << Element("li", "game", record.handout.verdict);
      return;
    }
    if (!record.explained) return;
    std::string game;
    if (task.game->game != last_game) {
      last_game = task.game->game;
      game = words.Text(Say("lesson.game", static_cast<int>(last_game) + 1,
                            record.game_title));
    }
    const KeyPosition& key = task.game->keys[task.key];
    out << HandoutContentsLine(key.index, record.handout, game);
    places.push_back(record.handout.place);
    verdicts.push_back(record.handout.verdict);
    previous.push_back(key.previous.has_value()
                           ? static_cast<std::ptrdiff_t>(*key.previous)
                           : -1);
  });
  out << HandoutContentsEnd(words);
  std::size_t index = 0;
  const auto parts = [&](const std::function<void(HandoutParts&)>& visit) {
    JournalReader reader(journal);
    Fields fields;
    index = 0;
    while (reader.Next(fields)) {
      LessonRecord record = FromFields(fields);
      if (!record.explained) continue;
      visit(record.handout);
      ++index;
    }
  };
  parts([&](HandoutParts& part) {
    out << part.section << StepsTo(index, places, verdicts, previous, words)
        << part.section_end;
  });
  out << HandoutExercisesOpening(words);
  parts([&](HandoutParts& part) { out << part.exercise; });
  out << HandoutAnswersOpening(words);
  parts([&](HandoutParts& part) { out << part.answer; });
  out << HandoutClosing(words);
}

}  // namespace assay::service
