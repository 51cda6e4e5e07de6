// Many items through a few threads, in order.
#ifndef ASSAY_SERVICE_CLI_BATCH_H_
#define ASSAY_SERVICE_CLI_BATCH_H_

#include <functional>
#include <ostream>
#include <string>

#include "service/cli/items.h"

namespace assay::service {

// What became of one item.
struct ItemOutput {
  std::string text;  // printed as it is
  bool failed = false;
};

struct BatchResult {
  std::size_t items = 0;
  std::size_t failed = 0;
  bool written = true;  // false: the output could not be written
};

// Takes items, hands each to `work` on one of `jobs` threads and writes the
// outputs in the order of the items. Memory is bounded: a block of items is
// taken, worked on and written before the next. `work` must be safe to call
// from several threads. Shows progress on standard error where that is a
// terminal.
BatchResult RunBatch(ItemSource& source, std::ostream& out, int jobs,
                     const std::function<ItemOutput(const Item&)>& work);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_BATCH_H_
