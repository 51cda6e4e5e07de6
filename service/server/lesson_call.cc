#include "service/server/lesson_call.h"

namespace assay::service {

void LessonCall::Begin() {
  absl::Status may = call_.MayBegin();
  if (may.ok()) {
    may = call_.backend().pool.Admit(Lane::kBulk, call_.deadline());
  }
  if (!may.ok()) return End(may);
  Submit();
}

void LessonCall::OnWriteDone(bool ok) {
  if (!ok) return End(call_.UnwantedStatus());
  Submit();
}

void LessonCall::Submit() {
  call_.backend().pool.Submit(Lane::kBulk,
                              [self = shared_from_this()] { self->Step(); });
}

void LessonCall::Step() {
  if (call_.Unwanted()) return End(call_.UnwantedStatus());
  if (!prepared_) {
    const absl::Status status = Prepare();
    if (!status.ok()) return End(status);
    prepared_ = true;
  }
  WorkerPool& pool = call_.backend().pool;
  const std::uint64_t units = NextUnits();
  pool.Add(Lane::kBulk, units);
  const auto start = std::chrono::steady_clock::now();
  answer_.Clear();
  const bool made = MakeNext(answer_);
  pool.Done(Lane::kBulk, units, std::chrono::steady_clock::now() - start);
  if (call_.Unwanted()) return End(call_.UnwantedStatus());
  if (!made) return End(absl::OkStatus());
  StartWrite(&answer_);
}

void LessonCall::End(const absl::Status& status) {
  const grpc::Status finished = call_.ToFinish(status);
  call_.End();
  Finish(finished);
}

}  // namespace assay::service
