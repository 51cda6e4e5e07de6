#include "service/server/stream_call.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "service/server/answer.h"
#include "service/server/limits.h"
#include "service/server/status.h"
#include "service/server/wire.h"

namespace assay::service {
namespace {

constexpr std::chrono::milliseconds kRetryStreams{1000};

}  // namespace

RawBidiReactor* StreamCall::Start(Backend& backend, StreamRegistry& registry,
                                  grpc::CallbackServerContext* context) {
  auto made = std::make_shared<StreamCall>(backend, registry, context);
  made->self_ = made;
  made->refused_ = made->MayBegin();
  made->broken_ = !made->refused_.ok();
  StreamCall* const stream = made.get();
  if (!registry.Add(stream)) stream->draining_ = true;
  stream->Advance();
  return stream;
}

StreamCall::StreamCall(Backend& backend, StreamRegistry& registry,
                       grpc::CallbackServerContext* context)
    : call_(backend, Method::kExplainStream, context), registry_(registry) {
  ++backend.streams;
}

absl::Status StreamCall::MayBegin() const {
  absl::Status may = call_.MayBegin();
  if (!may.ok()) return may;
  const Backend& backend = call_.backend();
  if (backend.streams > backend.settings.most_streams) {
    return Overloaded(
        "too busy: " + std::to_string(backend.settings.most_streams) +
            " streams are open",
        kRetryStreams);
  }
  return backend.pool.Admit(Lane::kBulk, call_.deadline());
}

void StreamCall::Drain() {
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    draining_ = true;
  }
  Advance();
}

void StreamCall::OnReadDone(bool ok) {
  if (ok) call_.Took(incoming_.Length());
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    reading_ = false;
    if (!ok) {
      ended_ = true;
    } else if (!draining_ && !broken_) {
      waiting_bytes_ += incoming_.Length();
      items_.emplace_back();
      items_.back().request.Swap(&incoming_);
    }
    incoming_.Clear();
  }
  Advance();
}

void StreamCall::OnWriteDone(bool ok) {
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    writing_ = false;
    broken_ = broken_ || !ok;
  }
  Advance();
}

void StreamCall::OnCancel() {
  call_.Cancel();
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    broken_ = true;
  }
  Advance();
}

void StreamCall::OnDone() {
  registry_.Remove(this);
  --call_.backend().streams;
  self_.reset();
}

// Starts whatever the state allows, until it allows no more.
void StreamCall::Advance() {
  const std::shared_ptr<StreamCall> self = shared_from_this();
  while (AdvanceOnce()) {
  }
}

// More than one thread may be here at a time; each starts what it has decided
// itself. Nothing may be started after Finish: hence `starting_`.
bool StreamCall::AdvanceOnce() {
  Next next;
  absl::Status status;
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    next = Decide();
    if (next.finish) status = EndStatus();
  }
  if (next.work) Submit();
  if (next.read) StartRead(&incoming_);
  // Never with a buffer hint: a first answer with one waits, with the initial
  // metadata, for a second write that waits for it.
  if (next.write) StartWrite(&outgoing_);
  if (next.finish) {
    const grpc::Status finished = call_.ToFinish(status);
    call_.End();
    Finish(finished);
  }
  if (!next.read && !next.write) return false;
  const std::lock_guard<std::mutex> lock(mutex_);
  --starting_;
  return true;
}

StreamCall::Next StreamCall::Decide() {
  Next next;
  if (finished_) return next;
  if (!broken_ && !writing_ && !items_.empty() && items_.front().done) {
    next.write = writing_ = true;
    outgoing_.Swap(&items_.front().answer);
    items_.pop_front();
    ++first_;
  }
  const std::uint64_t end = first_ + items_.size();
  if (!broken_ && untaken_ < end && workers_ < call_.backend().pool.workers()) {
    next.work = true;
    ++workers_;
  }
  if (MayRead()) next.read = reading_ = true;
  if (next.read || next.write) ++starting_;
  const bool all_written = broken_ || items_.empty();
  next.finish = finished_ =
      Ending() && all_written && !writing_ && starting_ == 0;
  return next;
}

bool StreamCall::MayRead() const {
  return !reading_ && !Ending() &&
         items_.size() + (writing_ ? 1 : 0) < kStreamWindow &&
         waiting_bytes_ < kStreamWindowBytes;
}

absl::Status StreamCall::EndStatus() const {
  if (!refused_.ok()) return refused_;
  if (broken_ || call_.Unwanted()) return call_.UnwantedStatus();
  if (ended_) return absl::OkStatus();
  return absl::UnavailableError("shutting down: the first " +
                                std::to_string(first_) +
                                " requests were answered");
}

void StreamCall::Submit() {
  call_.backend().pool.Submit(Lane::kBulk,
                              [self = shared_from_this()] { self->Work(); });
}

// Until nothing waits, or others have waited long enough.
void StreamCall::Work() {
  const auto start = std::chrono::steady_clock::now();
  while (WorkOnOne()) {
    if (std::chrono::steady_clock::now() - start > WorkerPool::kSlice) {
      return Submit();
    }
  }
}

// False, and the task is over, where no request waits.
bool StreamCall::WorkOnOne() {
  grpc::ByteBuffer request;
  std::uint64_t index = 0;
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    if (broken_ || untaken_ >= first_ + items_.size()) {
      --workers_;
      return false;
    }
    index = untaken_++;
    request.Swap(&items_[index - first_].request);
    waiting_bytes_ -= request.Length();
  }
  grpc::ByteBuffer answer = Explain(request, index);
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    Item& item = items_[index - first_];
    item.answer.Swap(&answer);
    item.done = true;
  }
  Advance();
  return true;
}

grpc::ByteBuffer StreamCall::Explain(const grpc::ByteBuffer& request,
                                     std::uint64_t index) {
  auto& explain = ReusedMessage<v1::ExplainRequest>();
  auto& answer = ReusedMessage<v1::ExplainStreamResponse>();
  const absl::Status read = ReadMessage(request, kMostRequestBytes, explain);
  if (!read.ok()) {
    call_.CountItem(read, 0);
    answer.set_index(index);
    ToItemError(read, answer.mutable_error());
    grpc::Slice slice = WriteMessage(answer);
    return {&slice, 1};
  }
  WorkerPool& pool = call_.backend().pool;
  const std::uint64_t units =
      ItemUnits(explain, call_.backend().settings.budget);
  pool.Add(Lane::kBulk, units);
  const auto start = std::chrono::steady_clock::now();
  const ItemAnswer lent(call_, explain, index, &answer);
  pool.Done(Lane::kBulk, units, std::chrono::steady_clock::now() - start);
  grpc::Slice slice = WriteMessage(answer);
  return {&slice, 1};
}

bool StreamRegistry::Add(StreamCall* stream) {
  const std::lock_guard<std::mutex> lock(mutex_);
  streams_.push_back(stream);
  return !draining_;
}

void StreamRegistry::Remove(StreamCall* stream) {
  const std::lock_guard<std::mutex> lock(mutex_);
  streams_.erase(std::find(streams_.begin(), streams_.end(), stream));
}

// Drain takes a stream's own lock and may finish it, which ends in Remove on
// another thread; it waits here until all were told.
void StreamRegistry::DrainAll() {
  const std::lock_guard<std::mutex> lock(mutex_);
  draining_ = true;
  for (StreamCall* stream : streams_) stream->Drain();
}

}  // namespace assay::service
