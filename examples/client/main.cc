// A client of the service in C++: explains one position, or says what is wrong
// with it.
//
//   client_example 127.0.0.1:50051 "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1"
#include <iostream>

#include "service/client/client.h"

int main(int argc, char** argv) {
  namespace service = assay::service;
  if (argc != 3) {
    std::cerr << "usage: client_example ADDRESS FEN\n";
    return 2;
  }
  service::ClientOptions options;
  options.address = argv[1];
  options.deadline = std::chrono::seconds(10);
  const auto client = service::Client::Connect(options);
  if (!client.ok()) {
    std::cerr << client.status() << '\n';
    return 3;
  }
  assay::v1::ExplainRequest request;
  request.mutable_position()->set_fen(argv[2]);
  const auto answer = (*client)->Explain(request);
  if (!answer.ok()) {
    std::cerr << absl::StatusCodeToString(answer.status().code()) << '\n';
    for (const auto& violation : service::ViolationsOf(answer.status())) {
      std::cerr << "  " << violation.field << ": " << violation.description
                << '\n';
    }
    return 1;
  }
  const assay::v1::Explanation& explanation = answer->explanation();
  std::cout << explanation.summary() << '\n';
  for (const auto& reason : explanation.reasons()) {
    std::cout << "  " << reason.value_cp() << " cp for White: " << reason.text()
              << '\n';
  }
  return 0;
}
