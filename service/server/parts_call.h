// A call whose work comes in parts that several workers do side by side, and
// whose answer is the parts in order.
//
// Each part is the call's answer message with a part of its repeated field:
// messages that follow one another on the wire are read as one, merged. So
// parts are serialised where they are made, and never put together in memory.
#ifndef ASSAY_SERVICE_SERVER_PARTS_CALL_H_
#define ASSAY_SERVICE_SERVER_PARTS_CALL_H_

#include <atomic>
#include <cstdint>
#include <vector>

#include "service/server/unary_call.h"

namespace assay::service {

class PartsCall : public UnaryCall {
 public:
  using UnaryCall::UnaryCall;

 protected:
  // On a worker, each part once.
  virtual grpc::Slice MakePart(std::size_t part) = 0;
  virtual std::uint64_t UnitsOf(std::size_t part) const = 0;

  // Ends in Answer or Fail.
  void MakeParts(std::size_t parts);

 private:
  void Submit();
  void Work();
  void FinishPart(std::size_t part);

  std::size_t count_ = 0;  // does not change while workers look at it
  std::vector<grpc::Slice> parts_;
  std::atomic<std::size_t> next_{0};
  std::atomic<std::size_t> left_{0};
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_PARTS_CALL_H_
