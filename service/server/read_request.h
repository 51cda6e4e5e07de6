// From the contract's requests to the library's values. All faults at once, as
// problems with their path in the request (see status.h).
#ifndef ASSAY_SERVICE_SERVER_READ_REQUEST_H_
#define ASSAY_SERVICE_SERVER_READ_REQUEST_H_

#include <atomic>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "assay/base/problem.h"
#include "assay/explain/assayer.h"
#include "assay/v1/explainer.pb.h"

namespace assay::service {

// What a server grants; see options.h.
struct SearchBudget {
  std::uint64_t proof_nodes = 0;       // where a request asks for no number
  std::uint64_t most_proof_nodes = 0;  // above it: INVALID_ARGUMENT
};

// The nodes that a request may search; 0 for static_only.
std::uint64_t NodesOf(const v1::ExplainOptions& options,
                      const SearchBudget& budget);

ExplainOptions ToCore(const v1::ExplainOptions& options,
                      const SearchBudget& budget,
                      const std::atomic<bool>* cancelled);

// What is wrong with the options of a request.
std::vector<Problem> OptionProblems(const v1::ExplainOptions& options,
                                    const SearchBudget& budget);

// A FEN at `path` of the request.
absl::StatusOr<Position> ReadFen(const std::string& fen,
                                 const std::string& path);

// The position of a checked request; INVALID_ARGUMENT for anything that the
// contract lists for Explain. A long line of moves ends with CANCELLED soon
// after `cancelled` turns true.
absl::StatusOr<Position> ReadExplainRequest(const v1::ExplainRequest& request,
                                            const SearchBudget& budget,
                                            const std::atomic<bool>& cancelled);

// A move to explain, and where.
struct MoveQuestion {
  Position position;
  Move move;
};
// The same for ExplainMove.
absl::StatusOr<MoveQuestion> ReadMoveRequest(
    const v1::ExplainMoveRequest& request, const SearchBudget& budget,
    const std::atomic<bool>& cancelled);

struct CompareQuestion {
  Position position;
  std::vector<Move> moves;
  std::vector<Position> others;
};
// The same for Compare.
absl::StatusOr<CompareQuestion> ReadCompareRequest(
    const v1::CompareRequest& request, const SearchBudget& budget,
    const std::atomic<bool>& cancelled);

struct EditQuestion {
  Position position;
  std::vector<std::string> edits;  // not yet read
};
// The same for WhatIf, its edits left out.
absl::StatusOr<EditQuestion> ReadWhatIfRequest(
    const v1::WhatIfRequest& request, const SearchBudget& budget,
    const std::atomic<bool>& cancelled);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_READ_REQUEST_H_
