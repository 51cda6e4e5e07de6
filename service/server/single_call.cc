#include "service/server/single_call.h"

namespace assay::service {

void SingleCall::Begin() {
  WorkerPool& pool = call().backend().pool;
  const absl::Status admitted = pool.Admit(Lane::kSingle, call().deadline());
  if (!admitted.ok()) return Fail(admitted);
  const std::uint64_t units = Units();
  pool.Add(Lane::kSingle, units);
  pool.Submit(Lane::kSingle, [self = shared_from_this(), this, units] {
    const auto start = std::chrono::steady_clock::now();
    if (call().Unwanted()) {
      Fail(call().UnwantedStatus());
    } else {
      grpc::Slice slice;
      const absl::Status status = Work(slice);
      if (status.ok()) {
        Answer({std::move(slice)});
      } else {
        Fail(status);
      }
    }
    call().backend().pool.Done(Lane::kSingle, units,
                               std::chrono::steady_clock::now() - start);
  });
}

}  // namespace assay::service
