// The transposition table of one search: what is known of positions met before.
#ifndef ASSAY_PROOF_TABLE_H_
#define ASSAY_PROOF_TABLE_H_

#include <cstdint>
#include <vector>

#include "assay/rules/move.h"

namespace assay {

// How a stored score bounds the true one.
enum class Bound : std::uint8_t { kNone, kExact, kLower, kUpper };

struct TableEntry {
  std::uint64_t key = 0;
  Move move;
  std::int16_t score = 0;  // side to move's view, mates counted from here
  std::int8_t depth = 0;
  Bound bound = Bound::kNone;
};

// One entry a slot, the deeper or newer kept. Its size depends on the budget
// alone, so that results do not depend on the machine.
class Table {
 public:
  // Room for about one entry a node, from 1,024 to 262,144.
  explicit Table(std::uint64_t nodes);

  // The entry of a position; null where there is none.
  const TableEntry* Find(std::uint64_t key) const;
  void Store(const TableEntry& entry);

 private:
  std::vector<TableEntry> entries_;
  std::uint64_t mask_;
};

}  // namespace assay

#endif  // ASSAY_PROOF_TABLE_H_
