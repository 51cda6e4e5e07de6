#include "service/server/explain_lesson_call.h"

#include <utility>

#include "assay/base/problem.h"
#include "service/convert/lesson_convert.h"
#include "service/server/explain_item.h"
#include "service/server/lesson_request.h"
#include "service/server/wire.h"

namespace assay::service {
namespace {

LessonSelection ToCore(const v1::LessonSelection& message) {
  LessonSelection selection;
  selection.comments = message.comments();
  selection.assessments = message.assessments();
  selection.line_ends = message.line_ends();
  selection.turning_points = message.turning_points();
  selection.every_plies = message.every_plies();
  return selection;
}

grpc::ByteBuffer BytesOf(const v1::ExplainLessonResponse& message) {
  grpc::Slice slice = WriteMessage(message);
  return {&slice, 1};
}

}  // namespace

absl::Status ExplainLessonCall::Prepare() {
  absl::Status read = ReadLessonRequest(
      request(), call().backend().settings.budget, lesson_request_);
  if (!read.ok()) return read;
  lesson_.emplace(lesson_request_.pgn(), ToCore(lesson_request_.selection()),
                  call().backend().assayer, &call().explain_context().cancelled,
                  Catalogue::OrEnglish(lesson_request_.options().language(),
                                       Audience::kClub));
  if (call().Unwanted()) return call().UnwantedStatus();
  lesson_request_.clear_pgn();
  if (lesson_->games() == 0) return NoGames();
  reader_.emplace(*lesson_);
  return absl::OkStatus();
}

std::uint64_t ExplainLessonCall::NextUnits() const {
  if (progress_next_) return 0;
  return 1 + NodesOf(lesson_request_.options(), SearchBudget());
}

// Goes to the next key position to explain or game with faults; false at the
// end.
bool ExplainLessonCall::FindNext() {
  while (true) {
    if (game_.has_value()) {
      while (key_ < game_->keys.size() &&
             !game_->keys[key_].explained_at.empty()) {
        ++key_;
      }
      if (key_ < game_->keys.size()) return true;
      if (!game_->item.ok() && !fault_told_) return true;
    }
    game_ = reader_->Next();
    key_ = 0;
    fault_told_ = false;
    if (!game_.has_value()) return false;
  }
}

bool ExplainLessonCall::MakeNext(grpc::ByteBuffer& answer) {
  if (ended_) return false;
  auto& message = ReusedMessage<v1::ExplainLessonResponse>();
  if (progress_next_) {
    progress_next_ = false;
    message.mutable_progress()->set_done(done_);
    message.mutable_progress()->set_total(lesson_->size());
    ended_ = !FindNext();
  } else if (key_ < game_->keys.size()) {
    Explain(game_->keys[key_++], message.mutable_item());
    ++done_;
    progress_next_ = true;
  } else {
    const absl::Status status = game_->item.status();
    call().CountItem(status, 0);
    ToProto(status, message.mutable_error());
    fault_told_ = true;
    progress_next_ = true;
  }
  answer = BytesOf(message);
  return true;
}

void ExplainLessonCall::Explain(const KeyPosition& key, v1::LessonItem* item) {
  const ExplainContext context = call().explain_context();
  const v1::ExplainOptions& options = lesson_request_.options();
  ExplainOptions asked =
      service::ToCore(options, context.budget, &context.cancelled);
  asked.opening = key.index;
  Explanation explanation = context.assayer.Explain(key.position, asked);
  if (options.omit_claims()) explanation.claims.clear();
  ToProto(key, explanation, context.assayer, item);
  if (options.omit_claims()) DropClaimIndices(item);
  call().CountItem(absl::OkStatus(), NodesIn(item->explanation()));
}

}  // namespace assay::service
