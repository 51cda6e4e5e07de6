// Which texts of a message are not UTF-8. protobuf refuses such a message as a
// whole without saying why.
#ifndef ASSAY_SERVICE_SERVER_UTF8_H_
#define ASSAY_SERVICE_SERVER_UTF8_H_

#include <string_view>
#include <vector>

#include "assay/base/problem.h"
#include "google/protobuf/descriptor.h"

namespace assay::service {

bool IsUtf8(std::string_view text);

// A problem for each text field of `bytes`, a message of `type`, that is not
// UTF-8, with its path such as "requests[3].tag". Empty where there is none, or
// where the bytes are no message at all.
std::vector<Problem> Utf8Problems(const std::string& bytes,
                                  const google::protobuf::Descriptor& type);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_UTF8_H_
