// A position, or every reason why there is none.
#ifndef ASSAY_RULES_POSITION_CHECK_H_
#define ASSAY_RULES_POSITION_CHECK_H_

#include "absl/status/statusor.h"
#include "assay/rules/position.h"

namespace assay {

// INVALID_ARGUMENT with all that Position::FindProblems() finds.
absl::StatusOr<Position> CheckedPosition(const ParsedPosition& parsed);

}  // namespace assay

#endif  // ASSAY_RULES_POSITION_CHECK_H_
