#include "assay/proof/table.h"

#include <algorithm>

namespace assay {
namespace {

constexpr std::uint64_t kLeast = 1024;
constexpr std::uint64_t kMost = 262144;

std::uint64_t SizeFor(std::uint64_t nodes) {
  std::uint64_t size = kLeast;
  while (size < std::min(nodes, kMost)) size *= 2;
  return size;
}

}  // namespace

Table::Table(std::uint64_t nodes)
    : entries_(SizeFor(nodes)), mask_(entries_.size() - 1) {}

const TableEntry* Table::Find(std::uint64_t key) const {
  const TableEntry& entry = entries_[key & mask_];
  return entry.bound != Bound::kNone && entry.key == key ? &entry : nullptr;
}

void Table::Store(const TableEntry& entry) {
  TableEntry& slot = entries_[entry.key & mask_];
  const bool keep = slot.bound != Bound::kNone && slot.key == entry.key &&
                    slot.depth > entry.depth && entry.bound != Bound::kExact;
  if (!keep) slot = entry;
}

}  // namespace assay
