#include "assay/proof/table.h"

namespace assay {
namespace {

constexpr std::uint64_t kLeast = 1024;
constexpr std::uint64_t kMost = 524288;

// No quiescence entry of another position replaces one of this depth.
constexpr int kWorthKeeping = 2;

std::uint64_t SizeFor(std::uint64_t nodes) {
  std::uint64_t size = kLeast;
  while (size < kMost && size / 2 < nodes) size *= 2;
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
  const bool same = slot.key == entry.key;
  const bool keep =
      slot.bound != Bound::kNone &&
      (same ? slot.depth > entry.depth && entry.bound != Bound::kExact
            : entry.depth <= 0 && slot.depth >= kWorthKeeping);
  if (!keep) slot = entry;
}

}  // namespace assay
