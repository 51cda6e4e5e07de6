// Explain.
#ifndef ASSAY_SERVICE_SERVER_EXPLAIN_CALL_H_
#define ASSAY_SERVICE_SERVER_EXPLAIN_CALL_H_

#include "service/server/unary_call.h"

namespace assay::service {

// Answers on gRPC's own thread when nothing is to be searched and the request
// is short: handing it over would take longer than the work.
class ExplainCall : public UnaryCall {
 public:
  using UnaryCall::UnaryCall;

 private:
  void Begin() override;
  void HandOver(std::uint64_t nodes);
  void Explain(const v1::ExplainRequest& explain);
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_EXPLAIN_CALL_H_
