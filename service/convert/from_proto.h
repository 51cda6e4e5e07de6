// From a message of the contract back to the library's value: as much of it as
// a text is made of (explain/text.h) and, where it has its wordings, a handout
// (lesson/handout.h). For front doors that print what a server found.
#ifndef ASSAY_SERVICE_CONVERT_FROM_PROTO_H_
#define ASSAY_SERVICE_CONVERT_FROM_PROTO_H_

#include "absl/status/statusor.h"
#include "assay/explain/explanation.h"
#include "assay/v1/explanation.pb.h"

namespace assay::service {

// INVALID_ARGUMENT where the message's position is none. A line is taken as far
// as it can be played.
absl::StatusOr<Explanation> FromProto(const v1::Explanation& message);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CONVERT_FROM_PROTO_H_
