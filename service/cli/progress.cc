#include "service/cli/progress.h"

#include <unistd.h>

#include <cmath>
#include <iostream>

namespace assay::service {
namespace {

constexpr std::chrono::milliseconds kBetween{200};

}  // namespace

ProgressLine::ProgressLine(std::size_t total, std::size_t done)
    : shown_(isatty(STDERR_FILENO) != 0),
      total_(total),
      before_(done),
      done_(done),
      start_(Clock::now()) {}

ProgressLine::~ProgressLine() {
  if (!shown_ || done_ == before_) return;
  Write(Clock::now());
  std::cerr << '\n';
}

void ProgressLine::Step() { Reach(done_ + 1, total_); }

void ProgressLine::Reach(std::size_t done, std::size_t total) {
  done_ = done;
  total_ = total;
  if (!shown_) return;
  const Clock::time_point now = Clock::now();
  if (now - written_ >= kBetween) Write(now);
}

void ProgressLine::Write(Clock::time_point now) {
  written_ = now;
  const double seconds = std::chrono::duration<double>(now - start_).count();
  const double rate =
      seconds > 0 ? static_cast<double>(done_ - before_) / seconds : 0;
  std::cerr << "\r" << done_ << " of " << total_ << " positions";
  if (rate > 0) {
    const double left = static_cast<double>(total_ - done_) / rate;
    std::cerr << ", " << std::lround(rate) << " a second, " << std::lround(left)
              << " s left   ";
  }
  std::cerr.flush();
}

}  // namespace assay::service
