// What handbooks teach the two sides of a pawn structure with a name.
//
// A teaching is a hypothesis: it says of the plans that were found to work on
// the board which one the structure is known for. Alone a piece's way to where
// it is taught to stand is looked for anew, and offered if the way is safe and
// the ledger has little against it.
#ifndef ASSAY_PLANS_TEACHINGS_H_
#define ASSAY_PLANS_TEACHINGS_H_

#include <vector>

#include "assay/facts/structures.h"
#include "assay/plans/draft.h"

namespace assay {

// Adds to the promise of each draft that is taught in one of the structures,
// and notes the structure (Draft::taught). Of a teaching, only the draft that
// it fits best is meant: the first offered. `may_add`: such ways are added.
void CreditTeachings(const Outlook& outlook, const StructureList& structures,
                     bool may_add, std::vector<Draft>& drafts);

}  // namespace assay

#endif  // ASSAY_PLANS_TEACHINGS_H_
