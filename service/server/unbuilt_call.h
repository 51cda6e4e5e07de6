// Calls of the contract that nothing stands behind yet.
#ifndef ASSAY_SERVICE_SERVER_UNBUILT_CALL_H_
#define ASSAY_SERVICE_SERVER_UNBUILT_CALL_H_

#include "service/server/unary_call.h"

namespace assay::service {

// Deletes itself when gRPC is done with it.
class UnbuiltStream : public grpc::ServerWriteReactor<grpc::ByteBuffer> {
 public:
  UnbuiltStream(Backend& backend, Method method,
                grpc::CallbackServerContext* context)
      : call_(backend, method, context) {
    const grpc::Status finished =
        call_.ToFinish(absl::UnimplementedError("not built yet"));
    call_.End();
    Finish(finished);
  }
  void OnDone() override { delete this; }

 private:
  Call call_;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_UNBUILT_CALL_H_
