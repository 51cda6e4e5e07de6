// What the calls with one request and a stream of answers have in common.
//
// One thing happens at a time: a worker makes the next answer, gRPC takes it,
// and only then the next is asked for. So a client that does not read costs
// one answer of memory, and the client's pace is the call's.
#ifndef ASSAY_SERVICE_SERVER_LESSON_CALL_H_
#define ASSAY_SERVICE_SERVER_LESSON_CALL_H_

#include <memory>

#include "grpcpp/support/byte_buffer.h"
#include "grpcpp/support/server_callback.h"
#include "service/server/call.h"

namespace assay::service {

class LessonCall : public grpc::ServerWriteReactor<grpc::ByteBuffer>,
                   public std::enable_shared_from_this<LessonCall> {
 public:
  LessonCall(Backend& backend, Method method,
             grpc::CallbackServerContext* context,
             const grpc::ByteBuffer& request)
      : call_(backend, method, context), request_(request) {}

  template <class Kind>
  static LessonCall* Start(Backend& backend, Method method,
                           grpc::CallbackServerContext* context,
                           const grpc::ByteBuffer& request) {
    const std::shared_ptr<LessonCall> made =
        std::make_shared<Kind>(backend, method, context, request);
    made->self_ = made;
    made->Begin();
    return made.get();
  }

  void OnCancel() override { call_.Cancel(); }
  void OnWriteDone(bool ok) override;
  void OnDone() override { self_.reset(); }

 protected:
  // On a worker, once: reads the request. A failure ends the call.
  virtual absl::Status Prepare() = 0;
  // On a worker, after Prepare: the next answer; false where there is none.
  virtual bool MakeNext(grpc::ByteBuffer& answer) = 0;
  // What the next answer takes, in the pool's units.
  virtual std::uint64_t NextUnits() const = 0;

  Call& call() { return call_; }
  const grpc::ByteBuffer& request() const { return request_; }

 private:
  void Begin();
  void Submit();
  void Step();
  void End(const absl::Status& status);

  Call call_;
  const grpc::ByteBuffer request_;
  grpc::ByteBuffer answer_;
  bool prepared_ = false;
  std::shared_ptr<LessonCall> self_;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_LESSON_CALL_H_
