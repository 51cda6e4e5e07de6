// Exact results of king and pawn against king.
//
// Our own table, worked out backwards from the end on first use (kpk.cc): one
// bit a position, 24 KB, no file. tests/oracle/kpk_oracle.mjs compares all
// 331,352 positions with a table made from an independent library's moves.
//
//   const std::optional<KpkResult> result = LookUpKpk(position);
//   if (result && result->won) ...  // result->pawn_side wins
#ifndef ASSAY_FACTS_KPK_H_
#define ASSAY_FACTS_KPK_H_

#include <optional>

#include "assay/base/side.h"
#include "assay/rules/position.h"

namespace assay {

struct KpkResult {
  Side pawn_side = Side::kWhite;
  // The pawn's side wins against every defence; else the game is drawn, since
  // a bare king never wins.
  bool won = false;

  // 1, 0 or -1: a win, a draw or a loss for the side.
  int For(Side side) const { return won ? (side == pawn_side ? 1 : -1) : 0; }
};

// The result with best play of a position with two kings and one pawn; nothing
// for any other. Moves played before do not count: no win takes fifty moves.
// Safe from any thread; the first call builds the table, in well under a
// millisecond, and none allocates.
std::optional<KpkResult> LookUpKpk(const Position& position);

}  // namespace assay

#endif  // ASSAY_FACTS_KPK_H_
