// A handout as PDF, by a browser that the machine has.
#ifndef ASSAY_SERVICE_CLI_PDF_H_
#define ASSAY_SERVICE_CLI_PDF_H_

#include <string>

#include "absl/status/status.h"

namespace assay::service {

// Prints the HTML file with a headless Chromium. UNAVAILABLE where none is
// installed or it fails.
absl::Status PrintPdf(const std::string& html, const std::string& pdf);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_PDF_H_
