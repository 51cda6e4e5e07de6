// The ledger of a position in words, and the reasons that it comes to.
#ifndef ASSAY_EXPLAIN_ACCOUNT_H_
#define ASSAY_EXPLAIN_ACCOUNT_H_

#include <optional>
#include <vector>

#include "assay/explain/explanation.h"

namespace assay {

struct Account {
  Centipawns score_cp = 0;
  std::vector<ExplainedEntry> ledger;
  std::vector<Reason> reasons;  // heaviest first
};

Account MakeAccount(const Facts& facts, const Weights& weights,
                    ClaimTable& table);

// The reasons of the position that the line leads to. Their claims go into
// `table`, which is the explained position's: each holds after the line.
std::vector<Reason> ReasonsAfter(const Position& position,
                                 const std::vector<Move>& line,
                                 const Weights& weights, ClaimTable& table);

// What a line of moves changes most for a side.
struct Change {
  Centipawns gain = 0;  // for the side
  Message phrase;       // what it has then: "the safer king"
  ClaimRefs claims;     // of the explained position; each holds after the line
};

// The topic that the line moves most in the side's favour, where the side is
// then the better one in it; none where nothing moves by as much as a reader
// would notice. `before` are the reasons of the position, all of them.
std::optional<Change> FindChange(const Position& position,
                                 const std::vector<Reason>& before, Side side,
                                 const std::vector<Move>& line,
                                 const Weights& weights, ClaimTable& table);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_ACCOUNT_H_
