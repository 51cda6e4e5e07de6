#include "service/server/worker_pool.h"

#include <algorithm>
#include <string>
#include <utility>

#include "service/server/status.h"

namespace assay::service {
namespace {

using std::chrono::microseconds;
using std::chrono::milliseconds;

constexpr milliseconds kShortestRetry{20};
constexpr unsigned kBulkTurn = 4;  // one in four

std::size_t Index(Lane lane) { return static_cast<std::size_t>(lane); }

}  // namespace

WorkerPool::WorkerPool(int workers, milliseconds most_wait)
    : most_wait_(most_wait) {
  for (int i = 0; i < workers; ++i) threads_.emplace_back([this] { Work(); });
}

WorkerPool::~WorkerPool() {
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    ending_ = true;
  }
  ready_.notify_all();
  for (std::thread& thread : threads_) thread.join();
}

absl::Status WorkerPool::Admit(Lane lane, Clock::time_point deadline) const {
  const microseconds wait = Wait(lane);
  const Clock::time_point now = Clock::now();
  const bool too_late =
      deadline > now && deadline - now < wait;  // else it has just passed
  if (wait > most_wait_ || too_late) {
    return Overloaded("too busy: work for " +
                          std::to_string(wait.count() / 1000) +
                          " ms is waiting",
                      std::max(kShortestRetry,
                               std::chrono::duration_cast<milliseconds>(wait)));
  }
  return absl::OkStatus();
}

void WorkerPool::Add(Lane lane, std::uint64_t units) {
  backlog_[Index(lane)] += units;
}

void WorkerPool::Done(Lane lane, std::uint64_t units,
                      std::chrono::nanoseconds spent) {
  backlog_[Index(lane)] -= units;
  if (units > 0 && spent.count() > 0) Learn(units, spent);
}

// An average that forgets: each measurement counts for an eighth. A lost update
// between two threads does no harm.
void WorkerPool::Learn(std::uint64_t units, std::chrono::nanoseconds spent) {
  const std::uint64_t old = picoseconds_per_unit_.load();
  const auto measured =
      static_cast<std::uint64_t>(spent.count()) * 1000 / units;
  picoseconds_per_unit_.store((old * 7 + measured) / 8);
}

microseconds WorkerPool::Wait(Lane lane) const {
  if (idle_ > 0) return microseconds(0);
  std::uint64_t units = backlog_[Index(Lane::kSingle)];
  if (lane == Lane::kBulk) units += backlog_[Index(Lane::kBulk)];
  const auto workers = static_cast<std::uint64_t>(threads_.size());
  return microseconds(units * (picoseconds_per_unit_ / 1000) / 1000 / workers);
}

void WorkerPool::Submit(Lane lane, Task task) {
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    lanes_[Index(lane)].push_back(std::move(task));
  }
  ready_.notify_one();
}

std::size_t WorkerPool::queued() const {
  const std::lock_guard<std::mutex> lock(mutex_);
  return lanes_[0].size() + lanes_[1].size();
}

bool WorkerPool::Take(Task& task) {
  std::unique_lock<std::mutex> lock(mutex_);
  ++idle_;
  ready_.wait(lock, [this] {
    return ending_ || !lanes_[0].empty() || !lanes_[1].empty();
  });
  --idle_;
  if (lanes_[0].empty() && lanes_[1].empty()) return false;
  const bool bulk =
      lanes_[0].empty() || (!lanes_[1].empty() && ++turn_ % kBulkTurn == 0);
  std::deque<Task>& lane = lanes_[bulk ? 1 : 0];
  task = std::move(lane.front());
  lane.pop_front();
  return true;
}

void WorkerPool::Work() {
  Task task;
  while (Take(task)) {
    task();
    task = nullptr;  // and with it what it held on to
  }
}

}  // namespace assay::service
