// What a move does that no term counts: the squares that it stops guarding or
// begins to guard, the pieces that it shuts in or lets out, the breaks that it
// stands in the way of. Every move gives something up.
#ifndef ASSAY_EXPLAIN_MOVE_EFFECTS_H_
#define ASSAY_EXPLAIN_MOVE_EFFECTS_H_

#include <string_view>
#include <vector>

#include "assay/explain/ledger_change.h"

namespace assay {

// The id of what a move plainly does (deed.h), its only argument: "the move
// castles".
inline constexpr std::string_view kDeedOfMove = "effect.deed";

// A move and the two positions around it. `line` has the move first; more moves
// follow where captures on its square belong to it, and `after` is then the
// position after them all.
struct MoveView {
  const Snapshot& before;
  const Snapshot& after;
  const std::vector<Move>& line;

  Side side() const { return before.position().side_to_move(); }
  Move move() const { return line.front(); }
};

// The most telling first, at most `most`; claims go into `table`, which is of
// the position before. What `counted` says already is left out.
std::vector<LedgerChange> UncountedGains(
    const MoveView& view, const std::vector<LedgerChange>& counted,
    std::size_t most, ClaimTable& table);

// The same of what it gives up. Where nothing telling is given up, and nothing
// that counts, the least bad of what is.
std::vector<LedgerChange> UncountedConcessions(
    const MoveView& view, const std::vector<LedgerChange>& counted,
    std::size_t most, ClaimTable& table);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_MOVE_EFFECTS_H_
