// How answers are printed, wherever they were found.
#ifndef ASSAY_SERVICE_CLI_PRINT_H_
#define ASSAY_SERVICE_CLI_PRINT_H_

#include <ostream>
#include <string>

#include "absl/status/status.h"
#include "assay/explain/text.h"
#include "assay/v1/explainer.pb.h"
#include "google/protobuf/message.h"
#include "service/cli/arguments.h"
#include "service/cli/batch.h"

namespace assay::service {

// One line of protobuf JSON, ended by a line feed.
std::string JsonLine(const google::protobuf::Message& message);

// Colour on a terminal, the ledger on request.
TextStyle StyleOf(const Arguments& arguments);

ItemOutput ExplainedText(const NamedRecord& named,
                         const Explanation& explanation,
                         const TextStyle& style);
// Takes `explanation`.
ItemOutput ExplainedJson(const NamedRecord& named,
                         v1::Explanation* explanation);
ItemOutput NotExplained(const Item& item, const absl::Status& status,
                        Format format);

ItemOutput Scored(const NamedRecord& named, Centipawns score, Format format);
ItemOutput NotScored(const absl::Status& status, Format format);

void PrintTerms(const v1::ListTermsResponse& catalogue, Format format,
                std::ostream& out);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_PRINT_H_
