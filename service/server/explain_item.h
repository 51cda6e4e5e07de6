// One position explained, for all calls that explain.
#ifndef ASSAY_SERVICE_SERVER_EXPLAIN_ITEM_H_
#define ASSAY_SERVICE_SERVER_EXPLAIN_ITEM_H_

#include <atomic>

#include "absl/status/status.h"
#include "assay/explain/assayer.h"
#include "assay/v1/explainer.pb.h"
#include "service/server/read_request.h"

namespace assay::service {

struct ExplainContext {
  const Assayer& assayer;
  const SearchBudget& budget;
  const std::atomic<bool>& cancelled;
};

// Fills `answer`. INVALID_ARGUMENT for a bad request, CANCELLED when the flag
// turned true before the work was done.
absl::Status ExplainItem(const ExplainContext& context,
                         const v1::ExplainRequest& request,
                         v1::Explanation* answer);

// Positions that the proofs of an answer visited.
std::uint64_t NodesIn(const v1::Explanation& explanation);

// Takes the lists of indices into claims out of a message and all its parts.
void DropClaimIndices(google::protobuf::Message* message);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_EXPLAIN_ITEM_H_
