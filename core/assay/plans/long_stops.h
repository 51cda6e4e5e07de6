// Stops of two moves: a piece brought round in time.
#ifndef ASSAY_PLANS_LONG_STOPS_H_
#define ASSAY_PLANS_LONG_STOPS_H_

#include "assay/plans/draft.h"

namespace assay {

// Where one move stops nothing, looks for a piece or pawn of the opponent that
// gets there in two while the plan still has a step to come, and marks the plan
// as stopped by it. For plans that leave the time for it; dearer than what
// Appraise() asks, so that it is asked of plans that will be shown.
void FindLongStop(const Outlook& outlook, Plan& plan);

}  // namespace assay

#endif  // ASSAY_PLANS_LONG_STOPS_H_
