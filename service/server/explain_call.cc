#include "service/server/explain_call.h"

#include "service/server/limits.h"
#include "service/server/wire.h"

namespace assay::service {
namespace {

// Longer requests hold moves to play, which takes time.
constexpr std::size_t kShortBytes = 1024;

}  // namespace

void ExplainCall::Begin() {
  const SearchBudget& budget = call().backend().settings.budget;
  const std::size_t bytes = request().Length();
  if (bytes > kShortBytes && bytes <= kMostRequestBytes) {
    return HandOver(budget.proof_nodes);
  }
  auto& explain = ReusedMessage<v1::ExplainRequest>();
  const absl::Status read = ReadMessage(request(), kMostRequestBytes, explain);
  if (!read.ok()) return Fail(read);
  const std::uint64_t nodes = NodesOf(explain.options(), budget);
  if (nodes > 0 && nodes <= budget.most_proof_nodes) return HandOver(nodes);
  Explain(explain);
}

// The worker reads the bytes again, which costs less than keeping a message.
void ExplainCall::HandOver(std::uint64_t nodes) {
  WorkerPool& pool = call().backend().pool;
  const absl::Status admitted = pool.Admit(Lane::kSingle, call().deadline());
  if (!admitted.ok()) return Fail(admitted);
  const std::uint64_t units = WorkerPool::kItemUnits + nodes;
  pool.Add(Lane::kSingle, units);
  pool.Submit(Lane::kSingle, [self = shared_from_this(), this, units] {
    const auto start = std::chrono::steady_clock::now();
    auto& explain = ReusedMessage<v1::ExplainRequest>();
    const absl::Status read =
        ReadMessage(request(), kMostRequestBytes, explain);
    if (call().Unwanted()) {
      Fail(call().UnwantedStatus());
    } else if (read.ok()) {
      Explain(explain);
    } else {
      Fail(read);
    }
    call().backend().pool.Done(Lane::kSingle, units,
                               std::chrono::steady_clock::now() - start);
  });
}

void ExplainCall::Explain(const v1::ExplainRequest& explain) {
  auto& answer = ReusedMessage<v1::ExplainResponse>();
  const absl::Status status = ExplainItem(call().explain_context(), explain,
                                          answer.mutable_explanation());
  call().CountItem(status, NodesIn(answer.explanation()));
  if (!status.ok()) return Fail(status);
  answer.set_tag(explain.tag());
  Answer({WriteMessage(answer)});
}

}  // namespace assay::service
