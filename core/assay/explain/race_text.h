// Both sides' plans against each other, in a sentence of the summary.
#ifndef ASSAY_EXPLAIN_RACE_TEXT_H_
#define ASSAY_EXPLAIN_RACE_TEXT_H_

#include <string>
#include <vector>

#include "assay/explain/explanation.h"
#include "assay/plans/race.h"

namespace assay {

// "White is the quicker: two moves for the minority attack, against four for an
// attack on the king."; "" where no plan is worth racing. The plans are
// the explanation's; adds what the sentence stands on.
Message RaceText(const Race& race, const Position& position,
                 const std::vector<ToldPlan>& plans, ClaimTable& table,
                 ClaimRefs& refs);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_RACE_TEXT_H_
