// Many items through a few threads, in order.
#ifndef ASSAY_SERVICE_CLI_BATCH_H_
#define ASSAY_SERVICE_CLI_BATCH_H_

#include <functional>
#include <istream>
#include <ostream>
#include <string>

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

// Reads lines, hands each to `work` on one of `jobs` threads and writes the
// outputs in the order of the lines. Memory is bounded: a block of lines is
// read, worked on and written before the next. `work` must be safe to call
// from several threads. Shows progress on standard error where that is a
// terminal.
BatchResult RunBatch(std::istream& in, std::ostream& out, int jobs,
                     const std::function<ItemOutput(const std::string&)>& work);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_BATCH_H_
