// The service inside a host's own process, asked through its own client stub.
#include <iostream>

#include "assay/v1/explainer.grpc.pb.h"
#include "service/server/server.h"

int main() {
  assay::service::ServerOptions options;
  options.listen = {"127.0.0.1:0"};
  const auto server = assay::service::Server::Start(options);
  if (!server.ok()) {
    std::cerr << server.status().message() << '\n';
    return 1;
  }
  const auto stub =
      assay::v1::PositionExplainer::NewStub((*server)->InProcessChannel());
  grpc::ClientContext context;
  assay::v1::ScoreRequest request;
  request.add_fens("r3k3/8/8/8/8/8/4P3/4K3 w - - 0 1");
  assay::v1::ScoreResponse response;
  const grpc::Status status = stub->Score(&context, request, &response);
  (*server)->Drain();
  if (!status.ok() || response.outcomes_size() != 1 ||
      response.outcomes(0).score_cp() >= -200) {
    std::cerr << status.error_message() << '\n'
              << response.ShortDebugString() << '\n';
    return 1;
  }
  return 0;
}
