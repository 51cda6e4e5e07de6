// ExplainMove.
#ifndef ASSAY_SERVICE_SERVER_MOVE_CALL_H_
#define ASSAY_SERVICE_SERVER_MOVE_CALL_H_

#include "service/server/single_call.h"

namespace assay::service {

class MoveCall : public SingleCall {
 public:
  using SingleCall::SingleCall;

 private:
  absl::Status Work(grpc::Slice& slice) override;
  std::uint64_t Units() const override;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_MOVE_CALL_H_
