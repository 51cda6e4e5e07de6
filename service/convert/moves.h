// Moves explained, comparisons and what-ifs as messages of the contract.
#ifndef ASSAY_SERVICE_CONVERT_MOVES_H_
#define ASSAY_SERVICE_CONVERT_MOVES_H_

#include "assay/explain/comparison.h"
#include "assay/explain/move_explanation.h"
#include "assay/explain/what_if.h"
#include "assay/v1/explainer.pb.h"

namespace assay::service {

void ToProto(const MoveExplanation& told, const Assayer& assayer,
             v1::MoveExplanation* message);

// `others` are those that were compared beside the position.
void ToProto(const Comparison& comparison, const Position& position,
             const std::vector<Position>& others, const Assayer& assayer,
             v1::CompareResponse* message);

void ToProto(const WhatIf& told, const Assayer& assayer,
             v1::WhatIfResponse* message);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CONVERT_MOVES_H_
