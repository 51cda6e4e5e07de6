// What a program says of itself when it is asked for its version.
#ifndef ASSAY_SERVICE_CONVERT_VERSION_TEXT_H_
#define ASSAY_SERVICE_CONVERT_VERSION_TEXT_H_

#include <string>

#include "assay/explain/assayer.h"
#include "assay/terms/term.h"
#include "assay/terms/weights_text.h"

namespace assay::service {

// "0.1.0 (catalogue 5, weights 0123456789abcdef)": two programs that say the
// same give the same answers. The weights are the defaults.
inline std::string VersionText() {
  return std::string(kVersion) + " (catalogue " +
         std::to_string(kCatalogueVersion) + ", weights " +
         Fingerprint(Weights()) + ")";
}

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CONVERT_VERSION_TEXT_H_
