// Problems as a Status and back. The Status says all of them in its message and
// carries them as a payload, so that a service can hand them on field by field.
#ifndef ASSAY_BASE_PROBLEM_STATUS_H_
#define ASSAY_BASE_PROBLEM_STATUS_H_

#include <vector>

#include "absl/status/status.h"
#include "assay/base/problem.h"

namespace assay {

// INVALID_ARGUMENT with every problem in the message, separated by "; ", and
// in the payload. OkStatus for none.
absl::Status ProblemsStatus(const std::vector<Problem>& problems);
absl::Status ProblemStatus(Problem problem);

// The problems that a status carries; empty where it carries none.
std::vector<Problem> ProblemsOf(const absl::Status& status);

}  // namespace assay

#endif  // ASSAY_BASE_PROBLEM_STATUS_H_
