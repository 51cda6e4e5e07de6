// Weights as text, for files, and their fingerprint.
#ifndef ASSAY_TERMS_WEIGHTS_TEXT_H_
#define ASSAY_TERMS_WEIGHTS_TEXT_H_

#include <cstddef>
#include <string>
#include <string_view>

#include "absl/status/statusor.h"
#include "assay/terms/weights.h"

namespace assay {

// A weights file: a line a weight, "name midgame endgame" in whole
// centipawns, in any order; "#" starts a comment. Weights that the text does
// not name keep their defaults. INVALID_ARGUMENT with a Problem for each bad
// line: no such weight, not two whole numbers, out of -10000 to 10000, named
// twice; and for texts above kMostWeightsBytes.
inline constexpr std::size_t kMostWeightsBytes = 65536;
absl::StatusOr<Weights> ParseWeights(std::string_view text);

// All weights in that form.
std::string ToText(const Weights& weights);

// Sixteen hexadecimal digits that change when any weight does.
std::string Fingerprint(const Weights& weights);

}  // namespace assay

#endif  // ASSAY_TERMS_WEIGHTS_TEXT_H_
