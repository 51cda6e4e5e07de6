// Many items through a few threads, in order.
#ifndef ASSAY_SERVICE_CLI_BATCH_H_
#define ASSAY_SERVICE_CLI_BATCH_H_

#include <functional>
#include <ostream>
#include <string>

#include "absl/status/status.h"
#include "service/cli/items.h"

namespace assay::service {

// What became of one item.
struct ItemOutput {
  std::string text;  // printed as it is
  bool failed = false;
};

// Works on a few items at once, in order, and fills as many outputs. A failure
// is not an item's: it ends the batch.
using ShareWork = std::function<absl::Status(
    const Item* items, std::size_t count, ItemOutput* outputs)>;

// Work that looks at one item at a time and does not fail itself.
ShareWork OneByOne(std::function<ItemOutput(const Item&)> work);

struct BatchResult {
  std::size_t items = 0;
  std::size_t failed = 0;
  bool written = true;  // false: the output could not be written
  absl::Status work;    // why it ended early, if it did
};

// Takes items, hands shares of them to `work` on one of `jobs` threads and
// writes the outputs in the order of the items. Memory is bounded: a block of
// items is taken, worked on and written before the next. `work` must be safe to
// call from several threads. Shows progress on standard error where that is a
// terminal.
BatchResult RunBatch(ItemSource& source, std::ostream& out, int jobs,
                     const ShareWork& work);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_BATCH_H_
