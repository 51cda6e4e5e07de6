// Moves explained, comparisons and what-ifs as plain text, made from the
// contract's messages: the same wherever the answer was found.
#ifndef ASSAY_SERVICE_CLI_MOVE_TEXT_H_
#define ASSAY_SERVICE_CLI_MOVE_TEXT_H_

#include <string>
#include <vector>

#include "assay/explain/text_writer.h"
#include "assay/rules/position.h"
#include "assay/v1/explainer.pb.h"

namespace assay::service {

// `position` is the one before the move.
std::string MoveText(const Position& position, const v1::MoveExplanation& told,
                     const TextStyle& style);

// `names` are those of the compared: "12. Nf3", a FEN, ...
std::string ComparisonText(const Position& position,
                           const std::vector<std::string>& names,
                           const v1::CompareResponse& told,
                           const TextStyle& style);

std::string WhatIfText(const Position& position, const v1::WhatIfResponse& told,
                       const TextStyle& style);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_MOVE_TEXT_H_
