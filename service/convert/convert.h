// From the library's values to the messages of the public contract.
//
// One way only and without loss; requests are read where they are handled.
#ifndef ASSAY_SERVICE_CONVERT_CONVERT_H_
#define ASSAY_SERVICE_CONVERT_CONVERT_H_

#include "absl/status/status.h"
#include "assay/explain/assayer.h"
#include "assay/v1/common.pb.h"
#include "assay/v1/explainer.pb.h"
#include "assay/v1/explanation.pb.h"

namespace assay::service {

// `line` moves become SAN, read from the position that the claim is about.
void ToProto(const Position& position, const Claim& claim, v1::Claim* message);

void ToProto(const Explanation& explanation, const Assayer& assayer,
             v1::Explanation* message);

// Parts of an explanation that other answers have, too; moves become SAN, read
// from the position.
v1::Side ToProto(Side side);
void ToProto(const Position& position, const Proof& proof, v1::Proof* message);
void ToProto(const Position& position, const ToldPlan& told, v1::Plan* message);
void ToProto(const Position& position, const Threat& threat,
             v1::Threat* message);

// What makes an assayer's answers.
void ToProto(const Assayer& assayer, v1::Provenance* message);

// At most ten problems are carried, as the contract says.
void ToProto(const absl::Status& status, v1::ItemError* message);

// The catalogue with the weights of an assayer.
void ToProto(const Assayer& assayer, v1::ListTermsResponse* message);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CONVERT_CONVERT_H_
