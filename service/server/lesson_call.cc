#include "service/server/lesson_call.h"

#include <utility>

#include "service/server/limits.h"

namespace assay::service {

void LessonCall::Begin() {
  WorkerPool& pool = call_.backend().pool;
  status_ = call_.MayBegin();
  if (status_.ok()) status_ = pool.Admit(Lane::kBulk, call_.deadline());
  if (!status_.ok()) {
    broken_ = true;
    return Advance();
  }
  workers_ = 1;
  pool.Submit(Lane::kBulk,
              [self = shared_from_this()] { self->PrepareOnWorker(); });
}

void LessonCall::PrepareOnWorker() {
  absl::Status status =
      call_.Unwanted() ? call_.UnwantedStatus() : this->Prepare();
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    --workers_;
    prepared_ = status.ok();
    broken_ = broken_ || !prepared_;
    status_ = std::move(status);
  }
  Advance();
}

void LessonCall::OnWriteDone(bool ok) {
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    writing_ = false;
    broken_ = broken_ || !ok;
  }
  Advance();
}

void LessonCall::OnCancel() {
  call_.Cancel();
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    broken_ = true;
  }
  Advance();
}

// Starts whatever the state allows, until it allows no more.
void LessonCall::Advance() {
  const std::shared_ptr<LessonCall> self = shared_from_this();
  while (AdvanceOnce()) {
  }
}

// More than one thread may be here at a time; each starts what it has decided
// itself. Nothing may be started after Finish: hence `starting_`.
bool LessonCall::AdvanceOnce() {
  Decision next;
  absl::Status status;
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    next = Decide();
    if (next.finish) status = EndStatus();
  }
  WorkerPool& pool = call_.backend().pool;
  if (next.work) {
    pool.Add(Lane::kBulk, Units());
    pool.Submit(Lane::kBulk,
                [self = shared_from_this()] { self->WorkOnOne(); });
  }
  if (next.write) {
    StartWrite(&outgoing_);
    const std::lock_guard<std::mutex> lock(mutex_);
    --starting_;
  }
  if (next.finish) {
    const grpc::Status finished = call_.ToFinish(status);
    call_.End();
    Finish(finished);
  }
  return next.work || next.write;
}

LessonCall::Decision LessonCall::Decide() {
  Decision next;
  if (finished_) return next;
  if (!broken_ && prepared_) TellWhatIsDone();
  if (!broken_ && !writing_ && !answers_.empty()) {
    next.write = writing_ = true;
    outgoing_.Swap(&answers_.front());
    answers_.pop_front();
    ++starting_;
  }
  const int most = call_.backend().pool.workers();
  if (!broken_ && prepared_ && !begun_all_ && workers_ < most &&
      pieces_.size() + static_cast<std::size_t>(workers_) <
          kLessonWindow * static_cast<std::size_t>(most)) {
    next.work = true;
    ++workers_;
  }
  // Workers are waited for: what they do is counted as this call's.
  const bool all_written = broken_ || (told_all_ && answers_.empty());
  next.finish = finished_ =
      all_written && !writing_ && starting_ == 0 && workers_ == 0;
  return next;
}

// While nothing waits to be written: what is told takes memory, too.
void LessonCall::TellWhatIsDone() {
  while (answers_.empty() && !pieces_.empty() && pieces_.front().done) {
    Tell(*pieces_.front().piece);
    pieces_.pop_front();
    ++first_;
  }
  if (answers_.empty() && pieces_.empty() && begun_all_ && !told_all_) {
    TellEnd();
    told_all_ = true;
  }
}

absl::Status LessonCall::EndStatus() const {
  if (!status_.ok()) return status_;
  if (broken_) return call_.UnwantedStatus();
  return absl::OkStatus();
}

// A task of the pool: one piece, and others have their turn.
void LessonCall::WorkOnOne() {
  const std::uint64_t units = Units();
  Piece* piece = nullptr;
  std::uint64_t number = 0;
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    broken_ = broken_ || call_.Unwanted();
    if (!broken_ && !begun_all_) {
      std::unique_ptr<Piece> next = this->Next();
      begun_all_ = next == nullptr;
      if (next != nullptr) {
        number = first_ + pieces_.size();
        pieces_.push_back({std::move(next), false});
        piece = pieces_.back().piece.get();
      }
    }
  }
  const auto start = std::chrono::steady_clock::now();
  if (piece != nullptr) Work(*piece);
  const auto spent = std::chrono::steady_clock::now() - start;
  call_.backend().pool.Done(
      Lane::kBulk, units,
      piece == nullptr ? std::chrono::nanoseconds(0) : spent);
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    --workers_;
    broken_ = broken_ || call_.Unwanted();
    if (piece != nullptr) pieces_[number - first_].done = true;
  }
  Advance();
}

}  // namespace assay::service
