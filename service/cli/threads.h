// As many threads as there are to be had.
#ifndef ASSAY_SERVICE_CLI_THREADS_H_
#define ASSAY_SERVICE_CLI_THREADS_H_

#include <system_error>
#include <thread>
#include <vector>

namespace assay::service {

// Runs `loop` on `jobs` threads, this one included, until all of them have come
// to its end. Fewer where the system grants no more: whoever runs out of
// threads or memory is slower, and not wrong.
template <class Loop>
void RunOnThreads(int jobs, const Loop& loop) {
  std::vector<std::thread> threads;
  threads.reserve(static_cast<std::size_t>(jobs));
  try {
    while (static_cast<int>(threads.size()) + 1 < jobs) {
      threads.emplace_back(loop);
    }
  } catch (const std::system_error&) {
  }
  loop();
  for (std::thread& thread : threads) thread.join();
}

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_THREADS_H_
