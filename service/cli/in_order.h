// Tasks through a few threads, their outputs in the order of the tasks.
#ifndef ASSAY_SERVICE_CLI_IN_ORDER_H_
#define ASSAY_SERVICE_CLI_IN_ORDER_H_

#include <condition_variable>
#include <cstdint>
#include <functional>
#include <map>
#include <mutex>
#include <utility>

#include "service/cli/threads.h"

namespace assay::service {

// Takes tasks with `next` (false: there are no more), works on them on `jobs`
// threads, and hands the outputs to `sink` in the order of the tasks. `next`
// and `sink` are never called by two threads at once; `work` is. At most a few
// tasks a thread are held at any time. Ends early where `sink` says false.
template <class Task, class Output>
class InOrder {
 public:
  using Next = std::function<bool(Task&)>;
  using Work = std::function<Output(const Task&)>;
  using Sink = std::function<bool(Output&)>;

  InOrder(Next next, Work work, Sink sink)
      : next_(std::move(next)),
        work_(std::move(work)),
        sink_(std::move(sink)) {}

  // False where the sink ended it.
  bool Run(int jobs) {
    window_ = static_cast<std::uint64_t>(jobs) * 4;
    RunOnThreads(jobs, [this] { Loop(); });
    return !ended_by_sink_;
  }

 private:
  void Loop() {
    std::unique_lock<std::mutex> lock(mutex_);
    while (true) {
      room_.wait(lock, [this] { return over_ || taken_ < given_ + window_; });
      Task task;
      if (over_ || !next_(task)) {
        over_ = true;
        room_.notify_all();
        return;
      }
      const std::uint64_t number = taken_++;
      lock.unlock();
      Output output = work_(task);
      lock.lock();
      done_.emplace(number, std::move(output));
      Give();
    }
  }

  // Hands on what is next in order, under the lock.
  void Give() {
    for (auto first = done_.begin();
         first != done_.end() && first->first == given_ && !ended_by_sink_;
         first = done_.begin()) {
      if (!sink_(first->second)) {
        ended_by_sink_ = true;
        over_ = true;
      }
      done_.erase(first);
      ++given_;
    }
    room_.notify_all();
  }

  Next next_;
  Work work_;
  Sink sink_;
  std::mutex mutex_;
  std::condition_variable room_;
  std::map<std::uint64_t, Output> done_;
  std::uint64_t window_ = 1;
  std::uint64_t taken_ = 0;
  std::uint64_t given_ = 0;
  bool over_ = false;
  bool ended_by_sink_ = false;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_IN_ORDER_H_
