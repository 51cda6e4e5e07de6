#include "service/server/answer.h"

#include "service/server/limits.h"
#include "service/server/status.h"
#include "service/server/wire.h"

namespace assay::service {

ItemAnswer::ItemAnswer(Call& call, const v1::ExplainRequest& request,
                       std::uint64_t index, v1::ExplainStreamResponse* answer)
    : answer_(answer) {
  answer->set_index(index);
  if (request.tag().size() <= kMostTagBytes) answer->set_tag(request.tag());
  auto& explanation = ReusedMessage<v1::Explanation>();
  const absl::Status status =
      ExplainItem(call.explain_context(), request, &explanation);
  call.CountItem(status, NodesIn(explanation));
  if (status.ok()) {
    answer->unsafe_arena_set_allocated_explanation(&explanation);
  } else {
    ToItemError(status, answer->mutable_error());
  }
}

ItemAnswer::~ItemAnswer() {
  if (answer_->has_explanation()) {
    answer_->unsafe_arena_release_explanation();
  }
}

std::uint64_t ItemUnits(const v1::ExplainRequest& request,
                        const SearchBudget& budget) {
  const std::uint64_t nodes = NodesOf(request.options(), budget);
  return WorkerPool::kItemUnits + (nodes > budget.most_proof_nodes ? 0 : nodes);
}

}  // namespace assay::service
