#include "service/server/what_if_call.h"

#include "service/convert/moves.h"
#include "service/convert/wording.h"
#include "service/server/limits.h"
#include "service/server/wire.h"

namespace assay::service {

// Some thirty ledgers; nothing is searched.
std::uint64_t WhatIfCall::Units() const { return 2 * WorkerPool::kItemUnits; }

absl::Status WhatIfCall::Work(grpc::Slice& slice) {
  v1::WhatIfRequest request_message;
  absl::Status read =
      ReadMessage(request(), kMostRequestBytes, request_message);
  if (!read.ok()) return read;
  const ExplainContext context = call().explain_context();
  const absl::StatusOr<EditQuestion> asked =
      ReadWhatIfRequest(request_message, context.budget, context.cancelled);
  absl::StatusOr<WhatIf> told =
      asked.ok() ? AskWhatIf(context.assayer, asked->position, asked->edits,
                             ToCore(request_message.options(), context.budget,
                                    nullptr))
                 : asked.status();
  call().CountItem(told.status(), 0);
  if (!told.ok()) return told.status();
  if (call().Unwanted()) return call().UnwantedStatus();
  const bool with_claims = !request_message.options().omit_claims();
  if (!with_claims) {
    told->claims.clear();
    told->claims_before.clear();
  }
  v1::WhatIfResponse answer;
  ToProto(*told, context.assayer, &answer);
  if (request_message.options().with_wording()) AddWordings(*told, &answer);
  if (!with_claims) DropClaimIndices(&answer);
  slice = WriteMessage(answer);
  return absl::OkStatus();
}

}  // namespace assay::service
