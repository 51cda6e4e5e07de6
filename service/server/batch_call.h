// ExplainBatch.
#ifndef ASSAY_SERVICE_SERVER_BATCH_CALL_H_
#define ASSAY_SERVICE_SERVER_BATCH_CALL_H_

#include "service/server/parts_call.h"

namespace assay::service {

class BatchCall : public PartsCall {
 public:
  using PartsCall::PartsCall;

 private:
  void Begin() override;
  grpc::Slice MakePart(std::size_t part) override;
  std::uint64_t UnitsOf(std::size_t part) const override;

  v1::ExplainBatchRequest batch_;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_BATCH_CALL_H_
