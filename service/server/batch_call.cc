#include "service/server/batch_call.h"

#include <string>

#include "assay/base/problem_status.h"
#include "service/server/answer.h"
#include "service/server/limits.h"
#include "service/server/wire.h"

namespace assay::service {

void BatchCall::Begin() {
  const absl::Status read = ReadMessage(request(), kMostRequestBytes, batch_);
  if (!read.ok()) return Fail(read);
  const int requests = batch_.requests_size();
  if (requests > kMostBatch) {
    return Fail(ProblemStatus({"requests", "too many", std::to_string(requests),
                               "at most " + std::to_string(kMostBatch)}));
  }
  if (requests == 0) return Answer({});
  MakeParts(static_cast<std::size_t>(requests));
}

grpc::Slice BatchCall::MakePart(std::size_t part) {
  auto& answer = ReusedMessage<v1::ExplainBatchResponse>();
  const ItemAnswer lent(call(), batch_.requests(static_cast<int>(part)), part,
                        answer.add_responses());
  return WriteMessage(answer);
}

std::uint64_t BatchCall::UnitsOf(std::size_t part) const {
  return ItemUnits(batch_.requests(static_cast<int>(part)),
                   call().backend().settings.budget);
}

}  // namespace assay::service
