// Errors as clients see them.
#ifndef ASSAY_SERVICE_SERVER_STATUS_H_
#define ASSAY_SERVICE_SERVER_STATUS_H_

#include <chrono>

#include "absl/status/status.h"
#include "assay/v1/common.pb.h"
#include "grpcpp/support/status.h"

namespace assay::service {

// RESOURCE_EXHAUSTED with the time after which to try again.
absl::Status Overloaded(const std::string& message,
                        std::chrono::milliseconds retry_after);

// The call's status; its details are a google.rpc.BadRequest with a field
// violation for each problem (at most ten), or a google.rpc.RetryInfo.
//
// A problem's field is a path of the request ("position.fen"), or a path, a
// colon and a part of the text there ("position.fen:castling").
grpc::Status ToGrpc(const absl::Status& status);

// The same for one item; a problem's field is the part alone where there is
// one.
void ToItemError(const absl::Status& status, v1::ItemError* message);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_STATUS_H_
