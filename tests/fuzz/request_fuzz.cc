// Any bytes as the request of any call, through the handlers of a server in
// this process: every call ends, with an answer or with a status of the
// contract's. The first byte picks the call.
#include <memory>
#include <string>

#include "grpcpp/client_context.h"
#include "grpcpp/completion_queue.h"
#include "grpcpp/generic/generic_stub.h"
#include "service/server/log.h"
#include "service/server/method.h"
#include "service/server/server.h"
#include "tests/fuzz/fuzz.h"

namespace {

using assay::service::Server;

std::unique_ptr<Server> StartServer() {
  assay::service::Log::SetLevel(assay::service::LogLevel::kError);
  assay::service::ServerOptions options;
  options.listen = {"127.0.0.1:0"};
  options.workers = 1;
  options.proof_nodes = 100;  // and no request may ask for many
  options.max_proof_nodes = 1000;
  auto server = Server::Start(options);
  assay::fuzz::Require(server.ok(), "the server starts");
  return *std::move(server);
}

bool InContract(grpc::StatusCode code) {
  return code == grpc::OK || code == grpc::INVALID_ARGUMENT;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data,
                                      std::size_t size) {
  // Never destroyed: gRPC's threads outlive main.
  static const auto* const server = new std::unique_ptr<Server>(StartServer());
  static auto* const stub =
      new grpc::GenericStub((*server)->InProcessChannel());
  assay::fuzz::Choices choices(data, size);
  const std::string method =
      std::string("/assay.v1.PositionExplainer/") +
      assay::service::kMethodNames[choices.Below(assay::service::kMethods)];
  const grpc::Slice slice(choices.Rest().data(), choices.Rest().size());
  const grpc::ByteBuffer request(&slice, 1);

  // As a stream of one message each way: so are all calls on the wire.
  grpc::ClientContext context;
  grpc::CompletionQueue queue;
  void* tag = nullptr;
  bool ok = false;
  const auto call = stub->PrepareCall(&context, method, &queue);
  call->StartCall(nullptr);
  queue.Next(&tag, &ok);
  call->WriteLast(request, grpc::WriteOptions(), nullptr);
  queue.Next(&tag, &ok);
  grpc::ByteBuffer answer;
  do {
    call->Read(&answer, nullptr);
    queue.Next(&tag, &ok);
  } while (ok);
  grpc::Status status;
  call->Finish(&status, nullptr);
  queue.Next(&tag, &ok);
  assay::fuzz::Require(InContract(status.error_code()),
                       status.error_message().c_str());
  return 0;
}
