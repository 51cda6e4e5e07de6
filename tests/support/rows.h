// Tables of named rows: what the row types of all TEST_Ps share.
#ifndef ASSAY_TESTS_SUPPORT_ROWS_H_
#define ASSAY_TESTS_SUPPORT_ROWS_H_

#include <ostream>
#include <string>

#include "gtest/gtest.h"

namespace assay {
namespace testing_support {

// The base of a row. A row is known by its name, in CamelCase, and is shown by
// it where a test fails:
//   struct Count : Row { const char* fen; int moves; };
struct Row {
  const char* name;

  friend std::ostream& operator<<(std::ostream& out, const Row& row) {
    return out << row.name;
  }
};

// The last argument of INSTANTIATE_TEST_SUITE_P.
struct NameOfRow {
  template <class AnyRow>
  std::string operator()(const ::testing::TestParamInfo<AnyRow>& info) const {
    return info.param.name;
  }
};

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_ROWS_H_
