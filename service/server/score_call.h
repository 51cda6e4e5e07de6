// Score.
#ifndef ASSAY_SERVICE_SERVER_SCORE_CALL_H_
#define ASSAY_SERVICE_SERVER_SCORE_CALL_H_

#include "service/server/parts_call.h"

namespace assay::service {

// Few positions are scored on gRPC's own thread.
class ScoreCall : public PartsCall {
 public:
  using PartsCall::PartsCall;

 private:
  void Begin() override;
  grpc::Slice MakePart(std::size_t part) override;
  std::uint64_t UnitsOf(std::size_t part) const override;

  v1::ScoreRequest score_;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_SCORE_CALL_H_
