// One call from its start to its end: whether it may begin, whether it is still
// wanted, what it did, and how it is counted and logged.
#ifndef ASSAY_SERVICE_SERVER_CALL_H_
#define ASSAY_SERVICE_SERVER_CALL_H_

#include <atomic>
#include <chrono>
#include <cstdint>
#include <string>

#include "absl/status/status.h"
#include "grpcpp/server_context.h"
#include "service/server/backend.h"
#include "service/server/explain_item.h"
#include "service/server/method.h"

namespace assay::service {

class Call {
 public:
  // `message_bytes` are those of its one request; a stream's come later.
  Call(Backend& backend, Method method, grpc::CallbackServerContext* context,
       std::size_t message_bytes = 0);
  Call(const Call&) = delete;
  Call& operator=(const Call&) = delete;

  // UNAVAILABLE when the server is to stop, RESOURCE_EXHAUSTED when too many
  // calls are in flight.
  absl::Status MayBegin() const;

  // For OnCancel: the client is gone, or its deadline has passed.
  void Cancel() { cancelled_ = true; }
  // Cancelled, or past the deadline before gRPC has told us.
  bool Unwanted() const;
  // What an unwanted call ends with.
  absl::Status UnwantedStatus() const;

  ExplainContext explain_context() const {
    return {backend_.assayer, backend_.settings.budget, cancelled_};
  }
  // Turns true when the work is wanted no more; lives as long as the call.
  const std::atomic<bool>* cancelled() const { return &cancelled_; }
  std::chrono::system_clock::time_point deadline() const { return deadline_; }
  Backend& backend() const { return backend_; }

  // The client's connection has brought a message.
  void Took(std::size_t message_bytes) const;

  // Counts positions; from any thread.
  void CountItem(const absl::Status& status, std::uint64_t nodes);
  void CountItems(std::uint64_t good, std::uint64_t bad);
  // Counts what was searched besides.
  void CountNodes(std::uint64_t nodes);

  // The status to finish with. A failure tells the client the request's id, in
  // the trailing metadata.
  grpc::Status ToFinish(const absl::Status& status);
  // Just before Finish, once: counts and logs the call. (gRPC's word that the
  // answer is on its way comes late when there is much to do.)
  void End();

 private:
  const std::string& Id();
  void WriteLog(std::chrono::nanoseconds took);

  Backend& backend_;
  const Method method_;
  grpc::CallbackServerContext* const context_;
  const std::chrono::steady_clock::time_point start_;
  const std::chrono::system_clock::time_point deadline_;
  std::atomic<bool> cancelled_{false};
  std::atomic<std::uint64_t> good_{0};
  std::atomic<std::uint64_t> bad_{0};
  absl::Status status_;
  std::string id_;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_CALL_H_
