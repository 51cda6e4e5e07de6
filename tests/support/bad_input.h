// What the tests of malformed input share.
#ifndef ASSAY_TESTS_SUPPORT_BAD_INPUT_H_
#define ASSAY_TESTS_SUPPORT_BAD_INPUT_H_

#include <string>

#include "absl/status/status.h"
#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace assay {
namespace testing_support {

// "field: reason; field: reason ...", in the order of the problems.
inline std::string FieldsAndReasons(const absl::Status& status) {
  std::string text;
  for (const Problem& problem : ProblemsOf(status)) {
    if (!text.empty()) text += "; ";
    text += problem.field + ": " + problem.reason;
  }
  return text;
}

// Has exactly these faults, says for each what was found and expected, and
// stays short and printable whatever the input was.
inline void ExpectFaults(const absl::Status& status,
                         const std::string& fields_and_reasons) {
  EXPECT_EQ(FieldsAndReasons(status), fields_and_reasons);
  EXPECT_EQ(status.code(), absl::StatusCode::kInvalidArgument);
  for (const Problem& problem : ProblemsOf(status)) {
    EXPECT_FALSE(problem.found.empty()) << ToString(problem);
    EXPECT_FALSE(problem.expected.empty()) << ToString(problem);
    EXPECT_LT(ToString(problem).size(), 300U) << ToString(problem);
    EXPECT_THAT(std::string(status.message()),
                ::testing::HasSubstr(ToString(problem)));
  }
  for (const char c : status.message()) {
    EXPECT_TRUE(c >= ' ' && c <= '~') << static_cast<int>(c);
  }
}

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_BAD_INPUT_H_
