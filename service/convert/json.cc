#include "service/convert/json.h"

#include "google/protobuf/util/json_util.h"

namespace assay::service {

std::string ToJson(const google::protobuf::Message& message) {
  std::string json;
  const auto status = google::protobuf::util::MessageToJsonString(
      message, &json, google::protobuf::util::JsonPrintOptions());
  // Only malformed messages fail, which ours are not.
  return status.ok() ? json : std::string("{}");
}

}  // namespace assay::service
