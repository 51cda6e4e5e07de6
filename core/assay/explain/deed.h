// What one move plainly does: castles, trades, guards, attacks, develops, ...
#ifndef ASSAY_EXPLAIN_DEED_H_
#define ASSAY_EXPLAIN_DEED_H_

#include <vector>

#include "assay/explain/claim_table.h"
#include "assay/explain/message.h"
#include "assay/rules/position.h"

namespace assay {

// The predicate of a sentence about the line's first move: "develops the
// knight", "trades queens", "guards the pawn on d4"; none where it does nothing
// that has a name. The second move, if any, is the reply: a capture that is
// taken back is a trade.
Message DeedOf(const Position& position, const std::vector<Move>& line,
               ClaimTable& table, ClaimRefs& refs);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_DEED_H_
