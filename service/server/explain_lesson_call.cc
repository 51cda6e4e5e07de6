#include "service/server/explain_lesson_call.h"

#include <utility>

#include "assay/base/problem.h"
#include "service/convert/lesson_convert.h"
#include "service/convert/wording.h"
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

}  // namespace

absl::Status ExplainLessonCall::Prepare() {
  absl::Status read = ReadLessonRequest(
      request(), call().backend().settings.budget, lesson_request_);
  if (!read.ok()) return read;
  lesson_.emplace(lesson_request_.pgn(), ToCore(lesson_request_.selection()),
                  call().backend().assayer, call().cancelled(),
                  Catalogue::OrEnglish(lesson_request_.options().language(),
                                       Audience::kClub));
  if (call().Unwanted()) return call().UnwantedStatus();
  lesson_request_.clear_pgn();
  if (lesson_->games() == 0) return NoGames();
  reader_.emplace(*lesson_);
  return absl::OkStatus();
}

std::uint64_t ExplainLessonCall::Units() const {
  return 1 + NodesOf(lesson_request_.options(), SearchBudget());
}

std::unique_ptr<LessonCall::Piece> ExplainLessonCall::Next() {
  while (true) {
    const std::size_t keys = game_ == nullptr ? 0 : game_->keys.size();
    while (key_ < keys && !game_->keys[key_].explained_at.empty()) ++key_;
    const bool faulty = game_ != nullptr && !game_->item.ok();
    if (key_ < keys || (key_ == keys && faulty)) {
      auto place = std::make_unique<Place>();
      place->game = game_;
      place->key = key_++;
      return place;
    }
    std::optional<LessonGame> game = reader_->Next();
    if (!game.has_value()) return nullptr;
    game_ = std::make_shared<const LessonGame>(*std::move(game));
    key_ = 0;
  }
}

void ExplainLessonCall::Work(Piece& piece) {
  auto& place = static_cast<Place&>(piece);
  auto& message = ReusedMessage<v1::ExplainLessonResponse>();
  if (place.is_fault()) {
    const absl::Status status = place.game->item.status();
    call().CountItem(status, 0);
    ToProto(status, message.mutable_error());
  } else {
    Explain(place.game->keys[place.key], message.mutable_item());
  }
  place.answer = WriteMessage(message);
}

void ExplainLessonCall::Tell(Piece& piece) {
  auto& place = static_cast<Place&>(piece);
  TellProgress();
  Answer(std::move(place.answer));
  if (!place.is_fault()) ++done_;
}

void ExplainLessonCall::TellEnd() { TellProgress(); }

void ExplainLessonCall::TellProgress() {
  auto& message = ReusedMessage<v1::ExplainLessonResponse>();
  message.mutable_progress()->set_done(done_);
  message.mutable_progress()->set_total(lesson_->size());
  Answer(WriteMessage(message));
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
  if (options.with_wording()) {
    AddWordings(explanation, item->mutable_explanation());
  }
  if (options.omit_claims()) DropClaimIndices(item);
  call().CountItem(absl::OkStatus(), NodesIn(item->explanation()));
}

}  // namespace assay::service
