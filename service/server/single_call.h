// A call that one worker answers in one go.
#ifndef ASSAY_SERVICE_SERVER_SINGLE_CALL_H_
#define ASSAY_SERVICE_SERVER_SINGLE_CALL_H_

#include <cstdint>

#include "service/server/unary_call.h"

namespace assay::service {

class SingleCall : public UnaryCall {
 public:
  using UnaryCall::UnaryCall;

 protected:
  // On a worker: reads the request, fills `slice` with the answer's bytes.
  virtual absl::Status Work(grpc::Slice& slice) = 0;
  // What it counts for in the pool's queue, known before the request is read
  // in full.
  virtual std::uint64_t Units() const = 0;

 private:
  void Begin() override;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_SINGLE_CALL_H_
