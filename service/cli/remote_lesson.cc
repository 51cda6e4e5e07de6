#include "service/cli/remote_lesson.h"

#include <algorithm>
#include <string>
#include <utility>

#include "service/cli/remote_commands.h"
#include "service/convert/from_proto.h"
#include "service/convert/wording.h"

namespace assay::service {
namespace {

v1::ExplainLessonRequest RequestFor(const Arguments& arguments,
                                    const Lesson& lesson) {
  v1::ExplainLessonRequest request;
  request.set_pgn(lesson.text());
  v1::ExplainOptions* options = request.mutable_options();
  *options = RemoteOptions(arguments);
  // A handout has more than texts, and a file of items all claims.
  const bool printed =
      arguments.items_file.empty() && arguments.annotated_file.empty() &&
      arguments.handout_file.empty() && arguments.pdf_file.empty();
  options->set_with_wording(!printed);
  options->set_omit_claims(printed && arguments.format == Format::kText);
  const LessonSelection& asked = arguments.selection;
  v1::LessonSelection* selection = request.mutable_selection();
  selection->set_comments(asked.comments);
  selection->set_assessments(asked.assessments);
  selection->set_line_ends(asked.line_ends);
  selection->set_turning_points(asked.turning_points);
  selection->set_every_plies(asked.every_plies);
  return request;
}

// Takes a stream's items to the tasks that they are of.
class Taker {
 public:
  Taker(const LessonWork& work, std::size_t skip, LessonTasks& tasks,
        const std::function<bool(LessonRecord&)>& sink)
      : work_(work), skip_(skip), tasks_(tasks), sink_(sink) {}

  // False where no more are wanted.
  bool Take(v1::LessonItem& item) {
    if (skip_ > 0) {
      --skip_;
      return true;
    }
    if (!GiveUpToNext()) return false;
    if (!at_task_ || !IsOf(item)) return FailChoice();
    const absl::StatusOr<Explanation> explanation =
        FromProto(item.explanation());
    if (!explanation.ok()) return Fail("an item without a position");
    DropWordings(&item);
    LessonRecord record = MakeRecord(work_, task_, *explanation, item);
    at_task_ = false;
    return Give(record);
  }

  // At the stream's end.
  absl::Status Finish() {
    if (fault_.ok() && wanted_ && GiveUpToNext() && at_task_) {
      FailChoice();
    }
    return fault_;
  }

 private:
  // Makes and gives what needs no server, up to the next task that does.
  bool GiveUpToNext() {
    while (!at_task_ && tasks_.Next(task_)) {
      at_task_ = task_.is_to_explain();
      if (at_task_) break;
      LessonRecord record = MakeRecord(work_, task_);
      if (!Give(record)) return false;
    }
    return true;
  }

  bool Give(LessonRecord& record) { return wanted_ = sink_(record); }

  bool IsOf(const v1::LessonItem& item) const {
    const KeyPosition& key = task_.game->keys[task_.key];
    return item.game() == key.game &&
           std::equal(item.path().begin(), item.path().end(), key.path.begin(),
                      key.path.end());
  }

  bool FailChoice() {
    return Fail(
        "the server's key positions are not those chosen here; its weights or "
        "its version are others");
  }

  bool Fail(const std::string& message) {
    fault_ = absl::InternalError(message);
    return false;
  }

  const LessonWork& work_;
  std::size_t skip_;
  LessonTasks& tasks_;
  const std::function<bool(LessonRecord&)>& sink_;
  LessonTask task_;
  bool at_task_ = false;  // `task_` waits for its item
  bool wanted_ = true;
  absl::Status fault_;
};

}  // namespace

absl::Status ExplainRemotely(const Arguments& arguments, Client& client,
                             const LessonWork& work, const Lesson& lesson,
                             std::size_t skip, LessonTasks& tasks,
                             const std::function<bool(LessonRecord&)>& sink) {
  Taker taker(work, skip, tasks, sink);
  if (lesson.games() > 0) {
    if (lesson.text().size() > kMostRemoteGamesBytes) {
      return TooLargeForServers(lesson.text().size());
    }
    absl::Status called = client.ExplainLesson(
        RequestFor(arguments, lesson), [&](v1::ExplainLessonResponse& answer) {
          return !answer.has_item() || taker.Take(*answer.mutable_item());
        });
    if (!called.ok()) return called;
  }
  return taker.Finish();
}

}  // namespace assay::service
