// One entry in words: the line that the ledger shows beside its value.
#ifndef ASSAY_EXPLAIN_ENTRY_TEXT_H_
#define ASSAY_EXPLAIN_ENTRY_TEXT_H_

#include <string>

#include "assay/facts/facts.h"
#include "assay/terms/ledger.h"

namespace assay {

// A noun phrase without its owner: "doubled, isolated pawns on c3 and c4",
// "the open diagonal e1 to h4". `claims` are the ledger's.
std::string EntryPhrase(const Facts& facts, const Entry& entry,
                        const Claim* claims);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_ENTRY_TEXT_H_
