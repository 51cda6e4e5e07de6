// What comes of a plan that the other side does nothing about, in words.
#ifndef ASSAY_EXPLAIN_IF_IGNORED_TEXT_H_
#define ASSAY_EXPLAIN_IF_IGNORED_TEXT_H_

#include <vector>

#include "assay/explain/explanation.h"

namespace assay {

// What search found to come of the plan if the other side just develops, in
// place of what is said of waiting moves; unchanged where nothing was found
// that can be named. `before` are the reasons of the position, all of them.
void TellIfIgnored(const Position& position, const std::vector<Reason>& before,
                   const Weights& weights, ClaimTable& table, ToldPlan& told);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_IF_IGNORED_TEXT_H_
