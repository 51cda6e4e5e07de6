// Any position, explained: the entries add up, indices of claims are in range,
// and every form of the answer can be made.
#include "assay/explain/assayer.h"
#include "assay/explain/text.h"
#include "service/convert/convert.h"
#include "service/convert/wording.h"
#include "tests/fuzz/fuzz.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data,
                                      std::size_t size) {
  using assay::fuzz::Require;
  static const auto* const assayer = new assay::Assayer();
  assay::fuzz::Choices choices(data, size);
  assay::ExplainOptions options;
  options.static_only = choices.Below(2) == 1;
  options.all_claims = choices.Below(2) == 1;
  options.proof_nodes = 1 + choices.Below(256);
  if (choices.Below(2) == 1) options.language = "de";
  const assay::Position position = assay::fuzz::AnyPosition(choices);
  const assay::Explanation told = assayer->Explain(position, options);
  assay::Centipawns sum = 0;
  for (const assay::ExplainedEntry& explained : told.ledger) {
    sum += explained.entry.value_cp;
  }
  Require(sum == told.score_cp, "the entries add up to the score");
  Require(assayer->Score(position) == told.score_cp, "one score");
  for (const assay::Reason& reason : told.reasons) {
    for (const auto claim : reason.claims) {
      Require(claim < told.claims.size(), "a reason's claims are there");
    }
  }
  Require(!assay::ToText(told).empty(), "there is a text");
  assay::v1::Explanation message;
  assay::service::ToProto(told, *assayer, &message);
  assay::service::AddWordings(told, &message);
  Require(message.IsInitialized(), "there is a message");
  return 0;
}
