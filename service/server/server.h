// The server: made from options, run until it is told to stop.
#ifndef ASSAY_SERVICE_SERVER_SERVER_H_
#define ASSAY_SERVICE_SERVER_SERVER_H_

#include <memory>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "assay/terms/weights.h"
#include "grpcpp/server.h"
#include "grpcpp/server_builder.h"
#include "service/server/backend.h"
#include "service/server/explainer_service.h"
#include "service/server/options.h"

namespace assay::service {

// The weights of the options' file, or the defaults.
absl::StatusOr<Weights> LoadWeights(const ServerOptions& options);

class Server {
 public:
  // Listens on all addresses and serves. INVALID_ARGUMENT or UNAVAILABLE with
  // the reason where that cannot be.
  static absl::StatusOr<std::unique_ptr<Server>> Start(
      const ServerOptions& options);

  // Tells NOT_SERVING, then refuses calls, lets those in flight end, and stops:
  // after drain_notice_ms + drain_ms at the latest. True when all had ended.
  bool Drain();

  // The addresses with the ports that were taken.
  const std::vector<std::string>& addresses() const { return addresses_; }
  int metrics_port() const { return metrics_port_; }
  Backend& backend() { return backend_; }
  // A channel without a socket, for tests and embedding.
  std::shared_ptr<grpc::Channel> InProcessChannel();

 private:
  Server(const ServerOptions& options, const Weights& weights);
  absl::Status Listen();
  void Configure(grpc::ServerBuilder& builder) const;
  void SetServing(bool serving);
  void Shutdown();

  const ServerOptions options_;
  Backend backend_;
  ExplainerService service_;
  std::unique_ptr<grpc::Server> server_;
  std::vector<std::string> addresses_;
  int metrics_port_ = -1;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_SERVER_H_
