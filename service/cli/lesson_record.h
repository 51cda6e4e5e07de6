// What becomes of one place of a lesson, in every form that outputs need.
#ifndef ASSAY_SERVICE_CLI_LESSON_RECORD_H_
#define ASSAY_SERVICE_CLI_LESSON_RECORD_H_

#include <memory>
#include <string>

#include "assay/explain/assayer.h"
#include "assay/explain/catalogue.h"
#include "assay/explain/text.h"
#include "assay/lesson/handout.h"
#include "assay/lesson/key_positions.h"
#include "assay/v1/explainer.pb.h"
#include "service/cli/journal.h"

namespace assay::service {

// One key position of a game, or what is wrong with the game.
struct LessonTask {
  std::shared_ptr<const LessonGame> game;
  std::size_t key = 0;  // of the game's; their number: the game's fault

  bool is_fault() const { return key == game->keys.size(); }
  // Neither that nor a position that was explained before.
  bool is_to_explain() const {
    return !is_fault() && game->keys[key].explained_at.empty();
  }
};

// Tasks of a lesson, in the order of its text.
class LessonTasks {
 public:
  explicit LessonTasks(const Lesson& lesson) : reader_(lesson) {}
  // False at the lesson's end.
  bool Next(LessonTask& task);

 private:
  LessonReader reader_;
  std::shared_ptr<const LessonGame> game_;
  std::size_t key_ = 0;
};

struct LessonRecord {
  bool explained = false;  // else repeated, or a fault
  bool failed = false;
  std::string text;   // for a terminal
  std::string json;   // a line
  std::string words;  // a comment for the PGN; empty for none
  int nag = 0;
  std::string game_title;
  HandoutParts handout;
};

struct LessonWork {
  const Assayer& assayer;
  ExplainOptions options;
  TextStyle style;

  // Those around the texts.
  const Catalogue& words() const {
    return Catalogue::OrEnglish(options.language, options.audience);
  }
};

// Safe to call from several threads.
LessonRecord MakeRecord(const LessonWork& work, const LessonTask& task);
// The same of an explanation that was made elsewhere: of a task that is one.
LessonRecord MakeRecord(const LessonWork& work, const LessonTask& task,
                        const Explanation& explanation,
                        const v1::LessonItem& item);

Fields ToFields(const LessonRecord& record);
LessonRecord FromFields(const Fields& fields);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_LESSON_RECORD_H_
