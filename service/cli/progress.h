// How far long work has come, told on standard error where that is a terminal.
#ifndef ASSAY_SERVICE_CLI_PROGRESS_H_
#define ASSAY_SERVICE_CLI_PROGRESS_H_

#include <chrono>
#include <cstddef>

namespace assay::service {

// Belongs to one thread at a time. Writes at most a few times a second.
class ProgressLine {
 public:
  // `total` things to do, of which `done` were done before.
  ProgressLine(std::size_t total, std::size_t done);
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

  // One more is done.
  void Step();
  // So many are done, of so many.
  void Reach(std::size_t done, std::size_t total);

 private:
  using Clock = std::chrono::steady_clock;
  void Write(Clock::time_point now);

  const bool shown_;
  std::size_t total_;
  const std::size_t before_;
  std::size_t done_;
  const Clock::time_point start_;
  Clock::time_point written_;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_PROGRESS_H_
