// Both sides' plans as a race: a column for each own move.
#ifndef ASSAY_LESSON_TEMPO_CHART_H_
#define ASSAY_LESSON_TEMPO_CHART_H_

#include <string>

#include "assay/explain/catalogue.h"
#include "assay/explain/explanation.h"

namespace assay {

// Empty where neither side has a plan.
std::string TempoChart(const Explanation& explanation,
                       const Catalogue& words = Catalogue::English());

// "in time", "too slow", "stopped by ...Nxe5", "needs f3 first".
std::string StandingText(const ToldPlan& plan,
                         const Catalogue& words = Catalogue::English());

}  // namespace assay

#endif  // ASSAY_LESSON_TEMPO_CHART_H_
