// Both sides' plans held against each other.
#ifndef ASSAY_PLANS_RACE_H_
#define ASSAY_PLANS_RACE_H_

#include <cstdint>
#include <optional>
#include <vector>

#include "assay/plans/draft.h"

namespace assay {

// What the side to move should turn to first.
enum class Start : std::uint8_t {
  kNothing,   // neither side has a plan in time that has to be reckoned with
  kOwnPlan,   // its plan goes on
  kStopping,  // the other side's plan is faster and bigger, and can be stopped
  kBoth,      // the first move of its plan stops the other side's as well
};

// Between the best plan in time of each side, by what it gains.
struct Race {
  // By Index(side): its place among the side's plans; none where the side has
  // none that others have to reckon with.
  std::optional<std::size_t> runner[2];
  // By Index(side): half moves from now until it is carried out.
  int plies[2] = {};
  // Whose plan is through first; where one side alone has a plan, that side.
  std::optional<Side> faster;
  Start start = Start::kNothing;
  Move first;  // what the side to move starts with; null with kNothing
  // The side that has less material on the board and makes up for it by a plan
  // that is in time and not overtaken.
  std::optional<Side> compensated;
};

// Marks as slow what comes too late for a better plan of the other side, and
// gives credit to what stops that plan. Both outlooks are of one position.
void Compare(const Outlook& white, const Outlook& black,
             std::vector<Plan>& whites, std::vector<Plan>& blacks);

// The race between plans as they stand now, best first. Both outlooks are of
// one position.
Race FindRace(const Outlook& white, const Outlook& black,
              const std::vector<Plan>& whites, const std::vector<Plan>& blacks);

}  // namespace assay

#endif  // ASSAY_PLANS_RACE_H_
