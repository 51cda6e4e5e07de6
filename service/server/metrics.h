// What the server counts, and the endpoint where it can be read: Prometheus'
// text format over HTTP.
#ifndef ASSAY_SERVICE_SERVER_METRICS_H_
#define ASSAY_SERVICE_SERVER_METRICS_H_

#include <array>
#include <atomic>
#include <chrono>
#include <cstdint>
#include <functional>
#include <memory>
#include <string>

#include "absl/status/statusor.h"
#include "grpcpp/support/status_code_enum.h"
#include "service/server/method.h"

namespace prometheus {
class Counter;
class Exposer;
class Histogram;
class Registry;
}  // namespace prometheus

namespace assay::service {

class WorkerPool;

class Metrics {
 public:
  explicit Metrics(const WorkerPool& pool);
  ~Metrics();
  Metrics(const Metrics&) = delete;
  Metrics& operator=(const Metrics&) = delete;

  void CallStarted() { ++in_flight_; }
  void CallEnded(Method method, grpc::StatusCode code,
                 std::chrono::nanoseconds took);
  void ItemsDone(std::uint64_t good, std::uint64_t bad);
  void NodesSearched(std::uint64_t nodes);
  void TokenRefused();

  int in_flight() const { return in_flight_; }
  std::uint64_t items() const;  // good and bad

  // Serves http://127.0.0.1:PORT/metrics until the end; port 0 takes a free
  // one. Returns the port; UNAVAILABLE where it cannot be had.
  absl::StatusOr<int> Expose(int port);

 private:
  class Gauges;
  static constexpr std::size_t kCodes = 17;

  std::shared_ptr<prometheus::Registry> registry_;
  std::array<std::array<prometheus::Counter*, kCodes>, kMethods> calls_{};
  std::array<prometheus::Histogram*, kMethods> seconds_{};
  prometheus::Counter* good_items_;
  prometheus::Counter* bad_items_;
  prometheus::Counter* nodes_;
  prometheus::Counter* tokens_refused_;
  std::atomic<int> in_flight_{0};
  std::shared_ptr<Gauges> gauges_;
  std::unique_ptr<prometheus::Exposer> exposer_;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_METRICS_H_
