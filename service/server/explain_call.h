// Explain.
#ifndef ASSAY_SERVICE_SERVER_EXPLAIN_CALL_H_
#define ASSAY_SERVICE_SERVER_EXPLAIN_CALL_H_

#include "service/server/single_call.h"

namespace assay::service {

// Answers on gRPC's own thread, with gRPC's own reactor, where nothing is to be
// searched and the request is short: handing it over would take longer than the
// work. Null, and nothing is done, where it is not so.
grpc::ServerUnaryReactor* ExplainAtOnce(Backend& backend,
                                        const UnaryArguments& arguments);

// The others are handed to the pool.
class ExplainCall : public SingleCall {
 public:
  using SingleCall::SingleCall;

 private:
  absl::Status Work(grpc::Slice& slice) override;
  std::uint64_t Units() const override;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_EXPLAIN_CALL_H_
