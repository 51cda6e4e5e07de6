// What the calls with one answer have in common.
//
// A call lives until gRPC is done with it and the last task that works for it
// is gone, whichever is later: tasks hold it by shared_ptr.
#ifndef ASSAY_SERVICE_SERVER_UNARY_CALL_H_
#define ASSAY_SERVICE_SERVER_UNARY_CALL_H_

#include <memory>
#include <utility>
#include <vector>

#include "grpcpp/support/byte_buffer.h"
#include "grpcpp/support/server_callback.h"
#include "service/server/call.h"

namespace assay::service {

// What gRPC hands to a handler.
struct UnaryArguments {
  grpc::CallbackServerContext* context;
  const grpc::ByteBuffer* request;
  grpc::ByteBuffer* response;
};

class UnaryCall : public grpc::ServerUnaryReactor,
                  public std::enable_shared_from_this<UnaryCall> {
 public:
  UnaryCall(Backend& backend, Method method, const UnaryArguments& arguments)
      : call_(backend, method, arguments.context, arguments.request->Length()),
        request_(*arguments.request),
        response_(*arguments.response) {}

  // Makes a call and begins it.
  template <class Kind>
  static grpc::ServerUnaryReactor* Start(Backend& backend, Method method,
                                         const UnaryArguments& arguments) {
    const std::shared_ptr<UnaryCall> made =
        std::make_shared<Kind>(backend, method, arguments);
    made->self_ = made;
    const absl::Status may = made->call_.MayBegin();
    if (may.ok()) {
      made->Begin();
    } else {
      made->Fail(may);
    }
    return made.get();
  }

  void OnCancel() override { call_.Cancel(); }
  void OnDone() override { self_.reset(); }

 protected:
  // On one of gRPC's threads: short work, or a task for the pool. Every path
  // leads to one Answer or Fail.
  virtual void Begin() = 0;

  void Answer(std::vector<grpc::Slice> slices) {
    response_ = grpc::ByteBuffer(slices.data(), slices.size());
    End(absl::OkStatus());
  }
  void Fail(const absl::Status& status) { End(status); }

  Call& call() { return call_; }
  const Call& call() const { return call_; }
  const grpc::ByteBuffer& request() const { return request_; }

 private:
  void End(const absl::Status& status) {
    const grpc::Status finished = call_.ToFinish(status);
    call_.End();
    Finish(finished);
  }

  Call call_;
  const grpc::ByteBuffer& request_;
  grpc::ByteBuffer& response_;
  std::shared_ptr<UnaryCall> self_;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_UNARY_CALL_H_
