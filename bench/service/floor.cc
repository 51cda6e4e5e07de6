#include "bench/service/floor.h"

#include <cstdlib>
#include <iostream>

#include "absl/synchronization/mutex.h"
#include "assay/explain/assayer.h"
#include "assay/notation/fen.h"
#include "assay/v1/explainer.grpc.pb.h"
#include "bench/positions.h"
#include "grpcpp/grpcpp.h"
#include "service/convert/convert.h"
#include "service/server/wire.h"

namespace assay::bench {
namespace {

std::vector<grpc::Slice> Answers() {
  const Assayer assayer;
  ExplainOptions options;
  options.static_only = true;
  std::vector<grpc::Slice> answers;
  for (const Position& position : ManyPositions()) {
    v1::ExplainResponse answer;
    answer.set_tag(std::to_string(answers.size()));
    service::ToProto(assayer.Explain(position, options), assayer,
                     answer.mutable_explanation());
    answers.push_back(service::WriteMessage(answer));
  }
  return answers;
}

class Floor : public v1::PositionExplainer::WithRawCallbackMethod_Explain<
                  v1::PositionExplainer::Service> {
 public:
  grpc::ServerUnaryReactor* Explain(grpc::CallbackServerContext* context,
                                    const grpc::ByteBuffer* request,
                                    grpc::ByteBuffer* response) override {
    v1::ExplainRequest read;
    service::ReadMessage(*request, 1 << 20, read).IgnoreError();
    const std::size_t n = std::strtoul(read.tag().c_str(), nullptr, 10);
    *response = grpc::ByteBuffer(&answers_.at(n), 1);
    grpc::ServerUnaryReactor* reactor = context->DefaultReactor();
    reactor->Finish(grpc::Status::OK);
    return reactor;
  }

 private:
  const std::vector<grpc::Slice> answers_ = Answers();
};

}  // namespace

v1::ExplainRequest RequestOf(const std::vector<Position>& positions,
                             std::size_t n) {
  v1::ExplainRequest request;
  request.mutable_position()->set_fen(ToFen(positions[n % positions.size()]));
  request.mutable_options()->set_static_only(true);
  request.set_tag(std::to_string(n % positions.size()));
  return request;
}

void ServeFloor() {
  absl::SetMutexDeadlockDetectionMode(absl::OnDeadlockCycle::kIgnore);
  Floor floor;
  int port = 0;
  grpc::ServerBuilder builder;
  builder.AddListeningPort("127.0.0.1:0", grpc::InsecureServerCredentials(),
                           &port);
  builder.RegisterService(&floor);
  const auto server = builder.BuildAndStart();
  std::cerr << "{\"address\":\"127.0.0.1:" << port << "\"}\n";
  server->Wait();
  std::exit(0);
}

}  // namespace assay::bench
