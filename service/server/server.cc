#include "service/server/server.h"

#include <algorithm>
#include <chrono>
#include <fstream>
#include <iterator>
#include <thread>

#include "assay/base/problem.h"
#include "assay/terms/weights_text.h"
#include "grpc/grpc.h"
#include "grpc/health/v1/health.pb.h"
#include "grpcpp/ext/proto_server_reflection_plugin.h"
#include "grpcpp/health_check_service_interface.h"
#include "grpcpp/resource_quota.h"
#include "service/server/credentials.h"
#include "service/server/limits.h"
#include "service/server/log.h"
#include "service/server/unix_socket.h"

namespace assay::service {
namespace {

using std::chrono::milliseconds;
using std::chrono::steady_clock;

constexpr char kServiceName[] = "assay.v1.PositionExplainer";
// After so long without a call no more are on their way; clients that keep
// calling are waited for no longer than the other.
constexpr milliseconds kQuiet{500};
constexpr milliseconds kMostQuiet{2000};
constexpr milliseconds kPoll{2};

int Workers(const ServerOptions& options) {
  if (options.workers > 0) return options.workers;
  return std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
}

BackendSettings SettingsOf(const ServerOptions& options) {
  BackendSettings settings;
  settings.budget.proof_nodes = static_cast<unsigned>(options.proof_nodes);
  settings.budget.most_proof_nodes =
      static_cast<unsigned>(options.max_proof_nodes);
  settings.workers = Workers(options);
  settings.most_wait = milliseconds(options.max_queue_ms);
  settings.most_calls = options.max_calls;
  settings.most_streams = options.max_streams;
  settings.slow_call = milliseconds(options.slow_call_ms);
  return settings;
}

// gRPC serves health without generated code; reflection needs its descriptor.
void UseReflection() {
  static const bool done = [] {
    grpc::health::v1::HealthCheckRequest::descriptor();
    grpc::reflection::InitProtoReflectionServerBuilderPlugin();
    return true;
  }();
  static_cast<void>(done);
}

// "127.0.0.1:0" with the port that was taken.
std::string WithPort(const std::string& address, int port) {
  if (IsUnixAddress(address)) return address;
  return address.substr(0, address.rfind(':') + 1) + std::to_string(port);
}

}  // namespace

absl::StatusOr<Weights> LoadWeights(const ServerOptions& options) {
  if (options.weights.empty()) return Weights();
  std::ifstream file(options.weights, std::ios::binary);
  std::string text(kMostWeightsBytes + 1, '\0');
  file.read(text.data(), static_cast<std::streamsize>(text.size()));
  text.resize(static_cast<std::size_t>(file.gcount()));
  if (text.empty()) {
    return absl::UnavailableError("weights: cannot read: found " +
                                  Quoted(options.weights) +
                                  ", expected a file of weights");
  }
  return ParseWeights(text);
}

Server::Server(const ServerOptions& options, const Weights& weights)
    : options_(options),
      backend_(weights, SettingsOf(options)),
      service_(backend_) {}

absl::StatusOr<std::unique_ptr<Server>> Server::Start(
    const ServerOptions& options) {
  const absl::StatusOr<Weights> weights = LoadWeights(options);
  if (!weights.ok()) return weights.status();
  std::unique_ptr<Server> server(new Server(options, *weights));
  absl::Status listens = server->Listen();
  if (!listens.ok()) return listens;
  if (options.metrics_port >= 0) {
    const absl::StatusOr<int> port =
        server->backend_.metrics.Expose(options.metrics_port);
    if (!port.ok()) return port.status();
    server->metrics_port_ = *port;
  }
  server->SetServing(true);
  return server;
}

absl::Status Server::Listen() {
  grpc::EnableDefaultHealthCheckService(true);
  if (options_.reflection) UseReflection();
  grpc::ServerBuilder builder;
  Configure(builder);
  std::vector<int> ports(options_.listen.size(), 0);
  for (std::size_t i = 0; i < ports.size(); ++i) {
    const std::string& address = options_.listen[i];
    const auto credentials =
        MakeCredentials(options_, address, backend_.metrics);
    if (!credentials.ok()) return credentials.status();
    if (IsUnixAddress(address)) {
      absl::Status locked = LockSocket(address);
      if (!locked.ok()) return locked;
    }
    builder.AddListeningPort(address, *credentials, &ports[i]);
  }
  builder.RegisterService(&service_);
  server_ = builder.BuildAndStart();
  for (std::size_t i = 0; i < ports.size(); ++i) {
    if (server_ == nullptr || ports[i] == 0) {
      return absl::UnavailableError("listen: cannot listen: found " +
                                    Quoted(options_.listen[i]) +
                                    ", expected free addresses of ours");
    }
    addresses_.push_back(WithPort(options_.listen[i], ports[i]));
  }
  ports.erase(std::remove_if(ports.begin(), ports.end(),
                             [](int port) { return port <= 1; }),
              ports.end());
  backend_.connections.Start(
      ports, static_cast<std::uint64_t>(options_.max_unread_mb) << 20U);
  return absl::OkStatus();
}

void Server::Configure(grpc::ServerBuilder& builder) const {
  const ServerOptions& o = options_;
  const std::pair<const char*, int> arguments[] = {
      // A second server on the same port is a mistake, never wanted.
      {GRPC_ARG_ALLOW_REUSEPORT, 0},
      {GRPC_ARG_MAX_CONCURRENT_STREAMS, o.max_calls_per_connection},
      {GRPC_ARG_KEEPALIVE_TIME_MS, o.keepalive_time_s * 1000},
      {GRPC_ARG_KEEPALIVE_TIMEOUT_MS, o.keepalive_timeout_s * 1000},
      {GRPC_ARG_KEEPALIVE_PERMIT_WITHOUT_CALLS, 1},
      {GRPC_ARG_HTTP2_MIN_RECV_PING_INTERVAL_WITHOUT_DATA_MS,
       o.keepalive_min_ping_s * 1000},
      {GRPC_ARG_MAX_CONNECTION_IDLE_MS, o.max_connection_idle_s * 1000},
      {GRPC_ARG_MAX_CONNECTION_AGE_MS, o.max_connection_age_s * 1000},
      {GRPC_ARG_MAX_CONNECTION_AGE_GRACE_MS,
       o.max_connection_age_grace_s * 1000},
      {GRPC_ARG_SERVER_HANDSHAKE_TIMEOUT_MS, o.handshake_timeout_s * 1000}};
  for (const auto& [name, value] : arguments) {
    builder.AddChannelArgument(name, value);
  }
  builder.SetMaxReceiveMessageSize(static_cast<int>(kMostTransportBytes));
  builder.SetMaxSendMessageSize(static_cast<int>(kMostAnswerBytes));
  grpc::ResourceQuota quota("assayd");
  quota.Resize(static_cast<std::size_t>(o.memory_mb) << 20U);
  builder.SetResourceQuota(quota);
}

void Server::SetServing(bool serving) {
  auto* health = server_->GetHealthCheckService();
  health->SetServingStatus(kServiceName, serving);
  health->SetServingStatus(serving);
}

// A call that comes after gRPC's own Shutdown and before the client has heard
// of it would end with CANCELLED, which no client tries again. So calls are
// first refused here, with UNAVAILABLE, until no more come.
bool Server::Drain() {
  SetServing(false);
  std::this_thread::sleep_for(milliseconds(options_.drain_notice_ms));
  const auto end = steady_clock::now() + milliseconds(options_.drain_ms);
  backend_.draining = true;
  service_.streams().DrainAll();
  while (backend_.metrics.in_flight() > 0 && steady_clock::now() < end) {
    std::this_thread::sleep_for(kPoll);
  }
  const bool all_ended = backend_.metrics.in_flight() == 0;
  const auto patience = std::min(end, steady_clock::now() + kMostQuiet);
  while (steady_clock::now() - backend_.last_event.load() < kQuiet &&
         steady_clock::now() < patience) {
    std::this_thread::sleep_for(kPoll);
  }
  Shutdown();
  return all_ended;
}

// Of what is left, nothing is worth waiting for: foreign health watches, which
// last for ever, and calls that have outlasted the drain.
void Server::Shutdown() {
  std::thread shutdown([this] { server_->Shutdown(); });
  std::this_thread::sleep_for(kPoll);
  grpc_server_cancel_all_calls(server_->c_server());
  shutdown.join();
  server_->Wait();
  server_.reset();
}

std::shared_ptr<grpc::Channel> Server::InProcessChannel() {
  return server_->InProcessChannel(grpc::ChannelArguments());
}

}  // namespace assay::service
