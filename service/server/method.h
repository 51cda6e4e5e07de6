// The calls of the contract, for counting and logging.
#ifndef ASSAY_SERVICE_SERVER_METHOD_H_
#define ASSAY_SERVICE_SERVER_METHOD_H_

#include <cstddef>

namespace assay::service {

enum class Method {
  kExplain,
  kExplainStream,
  kExplainBatch,
  kScore,
  kExplainMove,
  kCompare,
  kWhatIf,
  kExplainLesson,
  kProofreadLesson,
  kListTerms,
};
inline constexpr std::size_t kMethods = 10;

// As in the contract.
inline constexpr const char* kMethodNames[kMethods] = {
    "Explain",         "ExplainStream", "ExplainBatch", "Score",
    "ExplainMove",     "Compare",       "WhatIf",       "ExplainLesson",
    "ProofreadLesson", "ListTerms"};

inline const char* Name(Method method) {
  return kMethodNames[static_cast<std::size_t>(method)];
}

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_METHOD_H_
