// Options for what is static: no search.
#ifndef ASSAY_TESTS_SUPPORT_STATIC_ONLY_H_
#define ASSAY_TESTS_SUPPORT_STATIC_ONLY_H_

#include "assay/explain/assayer.h"

namespace assay::testing_support {

inline ExplainOptions StaticOnly() {
  ExplainOptions options;
  options.static_only = true;
  return options;
}

}  // namespace assay::testing_support

#endif  // ASSAY_TESTS_SUPPORT_STATIC_ONLY_H_
