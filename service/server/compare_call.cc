#include "service/server/compare_call.h"

#include "service/convert/moves.h"
#include "service/convert/wording.h"
#include "service/server/limits.h"
#include "service/server/wire.h"

namespace assay::service {
namespace {

// Until it is read, a request is taken to compare so many positions.
constexpr std::uint64_t kUsual = 3;

}  // namespace

std::uint64_t CompareCall::Units() const {
  return kUsual * (WorkerPool::kItemUnits +
                   call().backend().settings.budget.proof_nodes);
}

absl::Status CompareCall::Work(grpc::Slice& slice) {
  v1::CompareRequest request_message;
  absl::Status read =
      ReadMessage(request(), kMostRequestBytes, request_message);
  if (!read.ok()) return read;
  const ExplainContext context = call().explain_context();
  const absl::StatusOr<CompareQuestion> asked =
      ReadCompareRequest(request_message, context.budget, context.cancelled);
  call().CountItem(asked.status(), 0);
  if (!asked.ok()) return asked.status();
  const v1::ExplainOptions& options = request_message.options();
  Comparison comparison =
      Compare(context.assayer, asked->position, asked->moves, asked->others,
              ToCore(options, context.budget, &context.cancelled));
  if (call().Unwanted()) return call().UnwantedStatus();
  if (options.omit_claims()) {
    comparison.claims.clear();
    comparison.claims_of_others.clear();
    for (Explanation& explanation : comparison.explanations) {
      explanation.claims.clear();
    }
  }
  v1::CompareResponse answer;
  ToProto(comparison, asked->position, asked->others, context.assayer, &answer);
  if (options.with_wording()) AddWordings(comparison, &answer);
  if (options.omit_claims()) DropClaimIndices(&answer);
  for (const v1::Explanation& explanation : answer.explanations()) {
    call().CountNodes(NodesIn(explanation));
  }
  slice = WriteMessage(answer);
  return absl::OkStatus();
}

}  // namespace assay::service
