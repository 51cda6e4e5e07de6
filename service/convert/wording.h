// What the texts of an explanation say, for clients that translate.
#ifndef ASSAY_SERVICE_CONVERT_WORDING_H_
#define ASSAY_SERVICE_CONVERT_WORDING_H_

#include "assay/explain/comparison.h"
#include "assay/explain/explanation.h"
#include "assay/explain/move_explanation.h"
#include "assay/explain/what_if.h"
#include "assay/v1/explainer.pb.h"
#include "assay/v1/explanation.pb.h"
#include "assay/v1/wording.pb.h"

namespace assay::service {

void ToProto(const Message& said, v1::Wording* wording);

// Back again; nothing where no catalogue has the id.
Message FromProto(const v1::Wording& wording);

// Takes all of them out of a message and its parts.
void DropWordings(google::protobuf::Message* message);

// Adds to each text of the message what it says. The message is that of what
// was told.
void AddWordings(const Explanation& explanation, v1::Explanation* message);
void AddWordings(const MoveExplanation& told, v1::MoveExplanation* message);
void AddWordings(const Comparison& comparison, v1::CompareResponse* message);
void AddWordings(const WhatIf& told, v1::WhatIfResponse* message);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CONVERT_WORDING_H_
