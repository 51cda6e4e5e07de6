// What the texts of an explanation say, for clients that translate.
#ifndef ASSAY_SERVICE_CONVERT_WORDING_H_
#define ASSAY_SERVICE_CONVERT_WORDING_H_

#include "assay/explain/explanation.h"
#include "assay/v1/explanation.pb.h"
#include "assay/v1/wording.pb.h"

namespace assay::service {

void ToProto(const Message& said, v1::Wording* wording);

// Back again; nothing where no catalogue has the id.
Message FromProto(const v1::Wording& wording);

// Adds to each text of the message what it says. The message is the
// explanation's.
void AddWordings(const Explanation& explanation, v1::Explanation* message);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CONVERT_WORDING_H_
