// Any text as a weights file: refused, or written and read again as the same,
// and of use whatever the weights are.
#include "assay/explain/assayer.h"
#include "assay/terms/weights_text.h"
#include "tests/fuzz/fuzz.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data,
                                      std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const absl::StatusOr<assay::Weights> read = assay::ParseWeights(text);
  if (!read.ok()) return 0;
  const absl::StatusOr<assay::Weights> again =
      assay::ParseWeights(assay::ToText(*read));
  assay::fuzz::Require(again.ok(), "what is written is read");
  const assay::Assayer assayer(*read);
  assay::fuzz::Require(
      assayer.weights_fingerprint() == assay::Fingerprint(*again),
      "as the same weights");
  assay::ExplainOptions options;
  options.proof_nodes = 50;
  const assay::Position start = assay::Position::Initial();
  assay::fuzz::Require(
      assayer.Explain(start, options).score_cp == assayer.Score(start),
      "one score");
  return 0;
}
