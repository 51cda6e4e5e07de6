// The transposition table of one search: what is known of positions met before.
#ifndef ASSAY_PROOF_TABLE_H_
#define ASSAY_PROOF_TABLE_H_

#include <cstdint>
#include <vector>

#include "assay/rules/move.h"

namespace assay {

// How a stored score bounds the true one.
enum class Bound : std::uint8_t { kNone, kExact, kLower, kUpper };

inline constexpr std::int16_t kNoStatic = 32767;

struct TableEntry {
  std::uint64_t key = 0;
  Move move;
  std::int16_t score = 0;  // side to move's view, mates counted from here
  // The static score, side to move's view; kNoStatic where it was not needed.
  std::int16_t static_score = kNoStatic;
  std::int8_t depth = 0;
  Bound bound = Bound::kNone;
};

// One entry a slot; a newer one replaces it unless it is shallow and the old
// one is not. Its size depends on the budget
// alone, so that results do not depend on the machine.
class Table {
 public:
  // Room for two entries a node, from 1,024 to 524,288.
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
