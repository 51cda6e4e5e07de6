// The threads that search, and who may still join their queue.
//
// gRPC's own threads are few and serve every connection; work that takes
// longer than about a millisecond goes here. Two lanes: calls for one position
// go before items of batches and streams, which give way after a slice of time
// (kSlice); one task in four comes from the slower lane even so, that it is
// never starved.
//
// Work is measured in units: a node of search, or its like in time. How long a
// unit takes is learnt while working, so that the wait of a new call can be
// told: one that would be kept waiting past its deadline, or longer than the
// server is set to let anyone wait, is refused at once.
#ifndef ASSAY_SERVICE_SERVER_WORKER_POOL_H_
#define ASSAY_SERVICE_SERVER_WORKER_POOL_H_

#include <array>
#include <atomic>
#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

#include "absl/status/status.h"

namespace assay::service {

enum class Lane { kSingle, kBulk };

class WorkerPool {
 public:
  using Task = std::function<void()>;
  using Clock = std::chrono::system_clock;

  // A task of the bulk lane that has run so long puts itself to the back.
  static constexpr std::chrono::microseconds kSlice{1000};
  // A static explanation, in units: about 100 microseconds beside nodes of
  // about 4.
  static constexpr std::uint64_t kItemUnits = 25;

  WorkerPool(int workers, std::chrono::milliseconds most_wait);
  // Runs what is queued, then ends.
  ~WorkerPool();
  WorkerPool(const WorkerPool&) = delete;
  WorkerPool& operator=(const WorkerPool&) = delete;

  // OK, or RESOURCE_EXHAUSTED with the time after which to try again.
  absl::Status Admit(Lane lane, Clock::time_point deadline) const;

  // So many units wait from now on,
  void Add(Lane lane, std::uint64_t units);
  // and no longer: they took `spent` (nothing, when they were skipped).
  void Done(Lane lane, std::uint64_t units, std::chrono::nanoseconds spent);

  void Submit(Lane lane, Task task);

  int workers() const { return static_cast<int>(threads_.size()); }
  std::size_t queued() const;
  // What a new call of the lane would wait.
  std::chrono::microseconds Wait(Lane lane) const;

 private:
  void Work();
  bool Take(Task& task);
  void Learn(std::uint64_t units, std::chrono::nanoseconds spent);

  const std::chrono::milliseconds most_wait_;
  mutable std::mutex mutex_;
  std::condition_variable ready_;
  std::array<std::deque<Task>, 2> lanes_;
  unsigned turn_ = 0;
  std::atomic<int> idle_{0};
  bool ending_ = false;
  std::array<std::atomic<std::uint64_t>, 2> backlog_{};  // units
  std::atomic<std::uint64_t> picoseconds_per_unit_{4'000'000};
  std::vector<std::thread> threads_;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_WORKER_POOL_H_
