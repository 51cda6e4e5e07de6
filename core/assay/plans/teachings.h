// What handbooks teach the two sides of a pawn structure with a name.
//
// A teaching is a hypothesis: it makes no plan of what a finder did not find to
// work on the board, and says only that, of the plans found, this is the one
// that the structure is known for.
#ifndef ASSAY_PLANS_TEACHINGS_H_
#define ASSAY_PLANS_TEACHINGS_H_

#include <vector>

#include "assay/facts/structures.h"
#include "assay/plans/draft.h"

namespace assay {

// Adds to the promise of each draft that is taught in one of the structures,
// and notes the structure (Draft::taught). Of a teaching, only the draft that
// it fits best is meant: the first offered.
void CreditTeachings(const Outlook& outlook, const StructureList& structures,
                     std::vector<Draft>& drafts);

}  // namespace assay

#endif  // ASSAY_PLANS_TEACHINGS_H_
