#include "service/cli/batch.h"

#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <iostream>
#include <mutex>
#include <utility>
#include <vector>

#include "service/cli/threads.h"

namespace assay::service {
namespace {

// Items a block: enough that threads seldom wait for the slowest.
constexpr std::size_t kBlock = 2048;
// Items that a thread takes at a time.
constexpr std::size_t kShare = 16;

absl::Status WorkThrough(const std::vector<Item>& items,
                         std::vector<ItemOutput>& outputs, int jobs,
                         const ShareWork& work) {
  std::atomic<std::size_t> next{0};
  std::mutex mutex;
  absl::Status status;
  const auto loop = [&] {
    while (true) {
      const std::size_t first = next.fetch_add(kShare);
      if (first >= items.size()) return;
      const std::size_t count = std::min(kShare, items.size() - first);
      const absl::Status worked = work(&items[first], count, &outputs[first]);
      if (worked.ok()) continue;
      const std::lock_guard<std::mutex> lock(mutex);
      status.Update(worked);
      next = items.size();
    }
  };
  RunOnThreads(jobs, loop);
  return status;
}

}  // namespace

ShareWork OneByOne(std::function<ItemOutput(const Item&)> work) {
  return [work = std::move(work)](const Item* items, std::size_t count,
                                  ItemOutput* outputs) {
    for (std::size_t i = 0; i < count; ++i) outputs[i] = work(items[i]);
    return absl::OkStatus();
  };
}

BatchResult RunBatch(ItemSource& source, std::ostream& out, int jobs,
                     const ShareWork& work) {
  const bool show_progress = isatty(STDERR_FILENO) != 0;
  BatchResult result;
  bool more = true;
  while (more && result.written && result.work.ok()) {
    std::vector<Item> items;
    Item item;
    while (items.size() < kBlock && (more = source.Next(item))) {
      items.push_back(std::move(item));
    }
    std::vector<ItemOutput> outputs(items.size());
    result.work = WorkThrough(items, outputs, jobs, work);
    for (const ItemOutput& output : outputs) {
      out << output.text;
      result.failed += output.failed ? 1 : 0;
    }
    out.flush();
    result.written = out.good();
    result.items += items.size();
    if (show_progress) std::cerr << "\r" << result.items << " done";
  }
  if (show_progress && result.items > 0) std::cerr << "\n";
  return result;
}

}  // namespace assay::service
