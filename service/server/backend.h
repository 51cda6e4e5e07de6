// What all calls share. Made once, before the first call; gone after the last.
#ifndef ASSAY_SERVICE_SERVER_BACKEND_H_
#define ASSAY_SERVICE_SERVER_BACKEND_H_

#include <atomic>
#include <chrono>

#include "assay/explain/assayer.h"
#include "grpcpp/support/slice.h"
#include "service/server/connection_guard.h"
#include "service/server/metrics.h"
#include "service/server/read_request.h"
#include "service/server/worker_pool.h"

namespace assay::service {

struct BackendSettings {
  SearchBudget budget;
  int workers = 1;
  std::chrono::milliseconds most_wait{5000};  // in the queue
  int most_calls = 1024;                      // in flight
  int most_streams = 256;                     // of ExplainStream, in flight
  std::chrono::milliseconds slow_call{1000};  // told in the log
};

struct Backend {
  Backend(const Weights& weights, const BackendSettings& given);

  const BackendSettings settings;
  const Assayer assayer;
  const grpc::Slice terms;  // the answer of ListTerms
  WorkerPool pool;
  Metrics metrics;
  ConnectionGuard connections;
  std::atomic<int> streams{0};
  std::atomic<bool> draining{false};  // take no more calls
  // When a call last began or ended.
  std::atomic<std::chrono::steady_clock::time_point> last_event{};
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_BACKEND_H_
