// What a host does with the library, in each way of having it. Every warning
// that a host may turn on is an error here, in our headers, too.
#include <iostream>
#include <string>

#include "assay/assay.h"

namespace {

int failures = 0;

void Expect(bool holds, const char* what) {
  if (holds) return;
  std::cerr << "does not hold: " << what << '\n';
  ++failures;
}

}  // namespace

int main() {
  // Black has an extra rook.
  const absl::StatusOr<assay::Position> position =
      assay::PositionFromFen("r3k3/8/8/8/8/8/4P3/4K3 w - - 0 1");
  Expect(position.ok(), "the position is read");
  const assay::Assayer assayer;
  const assay::Explanation explanation = assayer.Explain(*position);
  int sum = 0;
  for (const assay::ExplainedEntry& explained : explanation.ledger) {
    sum += explained.entry.value_cp;
  }
  Expect(sum == explanation.score_cp, "the entries add up to the score");
  Expect(assayer.Score(*position) == explanation.score_cp, "one score");
  Expect(explanation.score_cp < -200, "a rook is worth more than a pawn");
  Expect(!explanation.summary.empty(), "there is a summary");

  const std::string message(
      assay::PositionFromFen("8/8 w KX -").status().message());
  Expect(message.find("placement") != std::string::npos &&
             message.find("castling") != std::string::npos,
         "every fault is told");
  Expect(__cplusplus == ASSAY_EXPECTED_STANDARD,
         "the host is compiled to its own standard");
#ifdef ASSAY_PACKAGE_VERSION
  Expect(assay::kVersion == std::string(ASSAY_PACKAGE_VERSION),
         "the package has the library's version");
#endif
  return failures == 0 ? 0 : 1;
}
