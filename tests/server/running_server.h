// A server in the test's own process, on a free port.
#ifndef ASSAY_TESTS_SERVER_RUNNING_SERVER_H_
#define ASSAY_TESTS_SERVER_RUNNING_SERVER_H_

#include <memory>
#include <string>
#include <utility>

#include "gtest/gtest.h"
#include "service/client/client.h"
#include "service/server/options.h"
#include "service/server/server.h"

namespace assay::service {

// What is logged goes to standard error, as ever.
class RunningServer {
 public:
  explicit RunningServer(ServerOptions options = {}) {
    if (options.listen.empty()) options.listen = {"127.0.0.1:0"};
    options.drain_notice_ms = 0;
    auto started = Server::Start(options);
    EXPECT_TRUE(started.ok()) << started.status();
    server_ = *std::move(started);
  }
  ~RunningServer() { Stop(); }
  RunningServer(const RunningServer&) = delete;
  RunningServer& operator=(const RunningServer&) = delete;

  void Stop() {
    if (server_ == nullptr) return;
    EXPECT_TRUE(server_->Drain());
    server_ = nullptr;
  }

  std::string address() const { return server_->addresses().front(); }
  Server& server() { return *server_; }

  std::unique_ptr<Client> Connect() const { return ConnectTo(address()); }
  static std::unique_ptr<Client> ConnectTo(const std::string& address) {
    ClientOptions options;
    options.address = address;
    auto client = Client::Connect(options);
    EXPECT_TRUE(client.ok()) << client.status();
    return *std::move(client);
  }

 private:
  std::unique_ptr<Server> server_;
};

inline v1::ExplainRequest StaticRequest(const std::string& fen) {
  v1::ExplainRequest request;
  request.mutable_position()->set_fen(fen);
  request.mutable_options()->set_static_only(true);
  return request;
}

}  // namespace assay::service

#endif  // ASSAY_TESTS_SERVER_RUNNING_SERVER_H_
