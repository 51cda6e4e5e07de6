// One entry in words: the line that the ledger shows beside its value.
#ifndef ASSAY_EXPLAIN_ENTRY_TEXT_H_
#define ASSAY_EXPLAIN_ENTRY_TEXT_H_

#include "assay/explain/message.h"
#include "assay/facts/facts.h"
#include "assay/terms/ledger.h"

namespace assay {

// A noun phrase without its owner: "doubled, isolated pawns on c3 and c4",
// "the open diagonal e1 to h4". `claims` are the ledger's.
Message EntryPhrase(const Facts& facts, const Entry& entry,
                    const Claim* claims);

// "a protected passed pawn on e5, blocked on e6", "passed pawns on a5 and b4".
Message PassedPawns(bool guarded, Bitboard pawns, Squares blockade);

// "two useful squares".
Message UsefulSquares(int count);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_ENTRY_TEXT_H_
