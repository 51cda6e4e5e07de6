#include "service/server/parts_call.h"

#include <algorithm>

namespace assay::service {

void PartsCall::MakeParts(std::size_t parts) {
  WorkerPool& pool = call().backend().pool;
  const absl::Status admitted = pool.Admit(Lane::kBulk, call().deadline());
  if (!admitted.ok()) return Fail(admitted);
  for (std::size_t part = 0; part < parts; ++part) {
    pool.Add(Lane::kBulk, UnitsOf(part));
  }
  parts_.resize(parts);
  count_ = parts;
  left_ = parts;
  const auto workers = static_cast<std::size_t>(pool.workers());
  for (std::size_t i = std::min(parts, workers); i > 0; --i) Submit();
}

void PartsCall::Submit() {
  call().backend().pool.Submit(Lane::kBulk,
                               [self = shared_from_this(), this] { Work(); });
}

// Until no part is left to take, or others have waited long enough.
void PartsCall::Work() {
  const auto start = std::chrono::steady_clock::now();
  for (std::size_t part = next_++; part < count_; part = next_++) {
    FinishPart(part);
    if (std::chrono::steady_clock::now() - start > WorkerPool::kSlice) {
      return Submit();
    }
  }
}

void PartsCall::FinishPart(std::size_t part) {
  WorkerPool& pool = call().backend().pool;
  const auto start = std::chrono::steady_clock::now();
  const bool wanted = !call().Unwanted();
  if (wanted) parts_[part] = MakePart(part);
  const auto spent = std::chrono::steady_clock::now() - start;
  pool.Done(Lane::kBulk, UnitsOf(part),
            wanted ? spent : std::chrono::nanoseconds(0));
  if (--left_ > 0) return;
  if (call().Unwanted()) {
    Fail(call().UnwantedStatus());
  } else {
    Answer(std::move(parts_));
  }
}

}  // namespace assay::service
