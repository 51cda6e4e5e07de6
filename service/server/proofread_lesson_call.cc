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

std::uint64_t ProofreadLessonCall::Units() const {
  return 1 + NodesOf(lesson_request_.options(), SearchBudget());
}

std::unique_ptr<LessonCall::Piece> ProofreadLessonCall::Next() {
  while (game_ == nullptr || task_ == game_->tasks.size()) {
    std::optional<PgnItem> item = reader_->Next();
    if (!item.has_value()) return nullptr;
    auto game = std::make_shared<Game>();
    game->game = games_++;
    game->item = *std::move(item);
    game->tasks = ProofreadTasks(game->item);
    game_ = std::move(game);
    task_ = 0;
  }
  auto check = std::make_unique<Check>();
  check->game = game_;
  check->task = task_++;
  return check;
}

ProofreadSettings ProofreadLessonCall::Settings() {
  const Backend& backend = call().backend();
  const v1::ExplainOptions& options = lesson_request_.options();
  return {backend.assayer, NodesOf(options, backend.settings.budget),
          call().cancelled(), !options.static_only(),
          Catalogue::OrEnglish(options.language(), Audience::kClub)};
}

void ProofreadLessonCall::Work(Piece& piece) {
  auto& check = static_cast<Check&>(piece);
  const Game& game = *check.game;
  check.checked =
      Proofread(game.tasks[check.task], game.game, game.item, Settings());
  call().CountItem(absl::OkStatus(), 0);
}

void ProofreadLessonCall::Tell(Piece& piece) {
  auto& check = static_cast<Check&>(piece);
  clashes_.Add(check.checked, Settings().words);
  ++done_;
  for (const Finding& finding : check.checked.findings) {
    auto& message = ReusedMessage<v1::ProofreadLessonResponse>();
    ToProto(finding, call().backend().assayer, message.mutable_finding());
    Answer(WriteMessage(message));
  }
  if (done_ >= told_ + kToldEvery) TellProgress();
}

void ProofreadLessonCall::TellEnd() { TellProgress(); }

void ProofreadLessonCall::TellProgress() {
  told_ = done_;
  auto& message = ReusedMessage<v1::ProofreadLessonResponse>();
  message.mutable_progress()->set_done(done_);
  message.mutable_progress()->set_total(total_);
  Answer(WriteMessage(message));
}

}  // namespace assay::service
