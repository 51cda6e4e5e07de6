// A message as protobuf JSON, the one way in which all front doors print it.
#ifndef ASSAY_SERVICE_CONVERT_JSON_H_
#define ASSAY_SERVICE_CONVERT_JSON_H_

#include <string>

#include "google/protobuf/message.h"

namespace assay::service {

// One line, without a line feed.
std::string ToJson(const google::protobuf::Message& message);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CONVERT_JSON_H_
