#include "service/server/proofread_lesson_call.h"

#include <utility>

#include "service/convert/lesson_convert.h"
#include "service/server/explain_item.h"
#include "service/server/lesson_request.h"
#include "service/server/wire.h"

namespace assay::service {
namespace {

// Checks between two messages of progress.
constexpr std::uint64_t kToldEvery = 16;

}  // namespace

absl::Status ProofreadLessonCall::Prepare() {
  absl::Status read = ReadLessonRequest(
      request(), call().backend().settings.budget, lesson_request_);
  if (!read.ok()) return read;
  PgnReader counting(lesson_request_.pgn());
  bool games = false;
  while (const std::optional<PgnItem> item = counting.Next()) {
    if (call().Unwanted()) return call().UnwantedStatus();
    games = true;
    total_ += ProofreadTasks(*item).size();
  }
  if (!games) return NoGames();
  reader_.emplace(std::string_view(lesson_request_.pgn()));
  return absl::OkStatus();
}

std::uint64_t ProofreadLessonCall::NextUnits() const {
  return 1 + NodesOf(lesson_request_.options(), SearchBudget());
}

bool ProofreadLessonCall::NextGame() {
  if (item_.has_value()) ++game_;
  item_ = reader_->Next();
  if (!item_.has_value()) return false;
  tasks_ = ProofreadTasks(*item_);
  task_ = 0;
  return true;
}

void ProofreadLessonCall::Check() {
  const ExplainContext context = call().explain_context();
  const ProofreadSettings settings{
      context.assayer, NodesOf(lesson_request_.options(), context.budget),
      &context.cancelled, !lesson_request_.options().static_only(),
      Catalogue::OrEnglish(lesson_request_.options().language(),
                           Audience::kClub)};
  Checked checked = Proofread(tasks_[task_++], game_, *item_, settings);
  clashes_.Add(checked, settings.words);
  for (Finding& finding : checked.findings) {
    findings_.push_back(std::move(finding));
  }
  ++done_;
  call().CountItem(absl::OkStatus(), 0);
}

bool ProofreadLessonCall::MakeNext(grpc::ByteBuffer& answer) {
  auto& message = ReusedMessage<v1::ProofreadLessonResponse>();
  bool more = true;
  while (findings_.empty() && done_ < told_ + kToldEvery &&
         !call().Unwanted()) {
    while (!item_.has_value() || task_ == tasks_.size()) {
      more = NextGame();
      if (!more) break;
    }
    if (!more) break;
    Check();
  }
  if (!findings_.empty()) {
    ToProto(findings_.front(), call().backend().assayer,
            message.mutable_finding());
    findings_.pop_front();
  } else if (!last_told_) {
    told_ = done_;
    last_told_ = !more;
    message.mutable_progress()->set_done(done_);
    message.mutable_progress()->set_total(total_);
  } else {
    return false;
  }
  grpc::Slice slice = WriteMessage(message);
  answer = grpc::ByteBuffer(&slice, 1);
  return true;
}

}  // namespace assay::service
