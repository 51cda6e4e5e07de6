#include "service/server/move_call.h"

#include "service/convert/moves.h"
#include "service/convert/wording.h"
#include "service/server/limits.h"
#include "service/server/wire.h"

namespace assay::service {
namespace {

// Two sets of plans and three ledgers stand behind the texts.
constexpr std::uint64_t kStaticUnits = 6 * WorkerPool::kItemUnits;

}  // namespace

// Until it is read, the request is taken to ask for the default.
std::uint64_t MoveCall::Units() const {
  return kStaticUnits + call().backend().settings.budget.proof_nodes;
}

absl::Status MoveCall::Work(grpc::Slice& slice) {
  v1::ExplainMoveRequest request_message;
  absl::Status read =
      ReadMessage(request(), kMostRequestBytes, request_message);
  if (!read.ok()) return read;
  const ExplainContext context = call().explain_context();
  const absl::StatusOr<MoveQuestion> asked =
      ReadMoveRequest(request_message, context.budget, context.cancelled);
  call().CountItem(asked.status(), 0);
  if (!asked.ok()) return asked.status();
  const v1::ExplainOptions& options = request_message.options();
  MoveExplanation told =
      ExplainMove(context.assayer, asked->position, asked->move,
                  ToCore(options, context.budget, &context.cancelled));
  if (call().Unwanted()) return call().UnwantedStatus();
  if (options.omit_claims()) told.claims.clear();
  v1::ExplainMoveResponse answer;
  ToProto(told, context.assayer, answer.mutable_explanation());
  if (options.with_wording()) AddWordings(told, answer.mutable_explanation());
  if (options.omit_claims()) DropClaimIndices(&answer);
  call().CountNodes(answer.explanation().proof().nodes());
  slice = WriteMessage(answer);
  return absl::OkStatus();
}

}  // namespace assay::service
