// Calls kept in flight for a while, and what came of them.
#ifndef ASSAY_BENCH_SERVICE_LOAD_H_
#define ASSAY_BENCH_SERVICE_LOAD_H_

#include <algorithm>
#include <atomic>
#include <chrono>
#include <condition_variable>
#include <functional>
#include <iostream>
#include <memory>
#include <mutex>
#include <vector>

#include "grpcpp/client_context.h"
#include "grpcpp/support/status.h"

namespace assay::bench {

using Clock = std::chrono::steady_clock;

struct Figures {
  std::vector<double> microseconds;  // of each call
  double seconds = 0;
  std::size_t failed = 0;

  double Quantile(double q) {
    if (microseconds.empty()) return 0;
    const auto at = microseconds.begin() +
                    static_cast<std::ptrdiff_t>(
                        q * static_cast<double>(microseconds.size() - 1));
    std::nth_element(microseconds.begin(), at, microseconds.end());
    return *at;
  }
  double PerSecond() const {
    return static_cast<double>(microseconds.size()) / seconds;
  }
  void Add(const Figures& other) {
    microseconds.insert(microseconds.end(), other.microseconds.begin(),
                        other.microseconds.end());
    seconds += other.seconds;
    failed += other.failed;
  }
};

// Starts one call, number `n`, with that context, and has `done` called at its
// end.
using StartCall =
    std::function<void(grpc::ClientContext*, std::size_t slot, std::size_t n,
                       std::function<void(grpc::Status)> done)>;

// Keeps `in_flight` calls going for the time. Each slot has one call at a time,
// so that what a call needs can be kept by slot.
class Load {
 public:
  Load(int in_flight, StartCall start) : start_(std::move(start)) {
    slots_.resize(static_cast<std::size_t>(in_flight));
  }

  Figures Run(std::chrono::milliseconds time) {
    const auto begin = Clock::now();
    end_ = begin + time;
    running_ = static_cast<int>(slots_.size());
    for (std::size_t slot = 0; slot < slots_.size(); ++slot) Next(slot);
    std::unique_lock<std::mutex> lock(mutex_);
    ended_.wait(lock, [this] { return running_ == 0; });
    figures_.seconds =
        std::chrono::duration<double>(Clock::now() - begin).count();
    return std::move(figures_);
  }

 private:
  struct Slot {
    std::unique_ptr<grpc::ClientContext> context;
    Clock::time_point start;
  };

  void Next(std::size_t slot) {
    Slot& mine = slots_[slot];
    mine.context = std::make_unique<grpc::ClientContext>();
    mine.start = Clock::now();
    start_(mine.context.get(), slot, calls_++,
           [this, slot](const grpc::Status& status) { Done(slot, status); });
  }

  void Done(std::size_t slot, const grpc::Status& status) {
    const auto now = Clock::now();
    {
      const std::lock_guard<std::mutex> lock(mutex_);
      if (!status.ok() && figures_.failed++ == 0) {
        std::cerr << "failed: " << status.error_message() << '\n';
      }
      figures_.microseconds.push_back(
          std::chrono::duration<double, std::micro>(now - slots_[slot].start)
              .count());
      if (now >= end_) {
        if (--running_ == 0) ended_.notify_one();
        return;
      }
    }
    Next(slot);
  }

  const StartCall start_;
  std::vector<Slot> slots_;
  std::atomic<std::size_t> calls_{0};
  Clock::time_point end_;
  std::mutex mutex_;
  std::condition_variable ended_;
  int running_ = 0;
  Figures figures_;
};

}  // namespace assay::bench

#endif  // ASSAY_BENCH_SERVICE_LOAD_H_
