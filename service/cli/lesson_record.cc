#include "service/cli/lesson_record.h"

#include "assay/lesson/lesson_comment.h"
#include "assay/lesson/place.h"
#include "service/cli/print.h"
#include "service/convert/lesson_convert.h"

namespace assay::service {
namespace {

std::string TextOf(const KeyPosition& key, const GameTree& tree,
                   const Explanation& explanation, const LessonWork& work) {
  const Catalogue& words = work.words();
  std::string text = PlaceText(key.game, tree, key.node, words) + "\n  " +
                     words.Text(Say("lesson.chosen", key.because)) + "\n";
  for (const std::string& other : key.also_reached) {
    text += "  " + words.Text(Say("lesson.also_reached", other)) + "\n";
  }
  return text + ToText(explanation, work.style) + "\n";
}

LessonRecord MakeFault(const LessonGame& game, const Catalogue& words) {
  LessonRecord record;
  record.failed = true;
  const absl::Status status = game.item.status();
  record.text = "error: " + std::string(status.message()) + "\n\n";
  v1::ExplainLessonResponse response;
  ToProto(status, response.mutable_error());
  record.json = JsonLine(response);
  record.handout.verdict =
      words.Text(Say("lesson.unread", static_cast<int>(game.game) + 1,
                     std::string(status.message())));
  return record;
}

}  // namespace

bool LessonTasks::Next(LessonTask& task) {
  while (true) {
    const std::size_t tasks =
        game_ == nullptr ? 0
                         : game_->keys.size() + (game_->item.ok() ? 0U : 1U);
    if (key_ < tasks) {
      task = {game_, key_++};
      return true;
    }
    std::optional<LessonGame> game = reader_.Next();
    if (!game.has_value()) return false;
    game_ = std::make_shared<const LessonGame>(*std::move(game));
    key_ = 0;
  }
}

LessonRecord MakeRecord(const LessonWork& work, const LessonTask& task) {
  const LessonGame& game = *task.game;
  if (task.is_fault()) return MakeFault(game, work.words());
  const KeyPosition& key = game.keys[task.key];
  const GameTree& tree = game.item.tree;
  LessonRecord record;
  if (!key.explained_at.empty()) {
    // Where a line leaves the game it is clear what the position is.
    if (!tree.nodes[key.node].starts_line) {
      record.words =
          work.words().Text(Sentence(Say("lesson.same", key.explained_at)));
    }
    return record;
  }
  ExplainOptions options = work.options;
  options.opening = key.index;
  const Explanation explanation = work.assayer.Explain(key.position, options);
  v1::LessonItem item;
  ToProto(key, explanation, work.assayer, &item);
  return MakeRecord(work, task, explanation, item);
}

LessonRecord MakeRecord(const LessonWork& work, const LessonTask& task,
                        const Explanation& explanation,
                        const v1::LessonItem& item) {
  const KeyPosition& key = task.game->keys[task.key];
  const GameTree& tree = task.game->item.tree;
  LessonRecord record;
  record.explained = true;
  record.text = TextOf(key, tree, explanation, work);
  record.json = JsonLine(item);
  record.words = LessonComment(explanation);
  record.nag = explanation.verdict.nag;
  record.game_title = GameTitle(tree);
  record.handout = MakeHandoutParts({key, tree, explanation, work.words()});
  return record;
}

Fields ToFields(const LessonRecord& record) {
  const HandoutParts& handout = record.handout;
  return {std::string(record.explained ? "explained" : "") +
              (record.failed ? "failed" : ""),
          record.text,
          record.json,
          record.words,
          std::to_string(record.nag),
          record.game_title,
          handout.place,
          handout.verdict,
          handout.section,
          handout.section_end,
          handout.exercise,
          handout.answer};
}

LessonRecord FromFields(const Fields& fields) {
  LessonRecord record;
  if (fields.size() != 12) return record;
  record.explained = fields[0] == "explained";
  record.failed = fields[0] == "failed";
  record.text = fields[1];
  record.json = fields[2];
  record.words = fields[3];
  record.nag = std::stoi(fields[4]);
  record.game_title = fields[5];
  record.handout = {fields[6], fields[7],  fields[8],
                    fields[9], fields[10], fields[11]};
  return record;
}

}  // namespace assay::service
