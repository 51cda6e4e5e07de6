// The evaluator and explainer: weights in, explanations out.
//
//   const Assayer assayer;                       // default weights
//   absl::StatusOr<Position> position = PositionFromFen(fen);
//   Explanation e = assayer.Explain(*position);
//   e.summary        // "White is slightly better, with more space. ..."
//   e.score_cp       // White's view; the sum of e.ledger's values
//
// An Assayer never changes after construction; any number of threads may share
// one. Equal positions, options and weights give equal explanations.
#ifndef ASSAY_EXPLAIN_ASSAYER_H_
#define ASSAY_EXPLAIN_ASSAYER_H_

#include <atomic>
#include <cstdint>
#include <string>

#include "assay/explain/audience.h"
#include "assay/explain/explanation.h"
#include "assay/explain/reasons.h"
#include "assay/rules/position.h"
#include "assay/terms/weights.h"

namespace assay {

// The library's version, as in the package.
inline constexpr char kVersion[] = "0.1.0";

struct ExplainOptions {
  // The most reasons to give; further ones are left out, lightest first, and
  // so are those of less than kLightestReason unless nothing else is left.
  std::size_t max_reasons = 6;
  // The most plans to give for each side.
  std::size_t max_plans_per_side = 3;
  // Adds every claim that holds of the position, used or not.
  bool all_claims = false;
  // No search at all: the verdict is that of the static score, and there are
  // no threats, temptations or advice.
  bool static_only = false;
  // The language of the texts, as a BCP 47 tag: one that Catalogue::Of knows,
  // else English. Moves stay SAN with English letters.
  std::string language;
  // Who the texts are for.
  Audience audience = Audience::kClub;
  // In which way the summary opens, counted around (Catalogue::Text):
  // neighbours that are read one after the other are given one number after the
  // other.
  std::size_t opening = 0;
  // Nodes of search, all proofs of the explanation together; 0: the default,
  // kDefaultProofNodes (proof/search.h).
  std::uint64_t proof_nodes = 0;
  // Ends the search soon after it turns true; the verdict is then that of what
  // was searched by then.
  const std::atomic<bool>* cancelled = nullptr;
};

class Assayer {
 public:
  Assayer() : Assayer(Weights()) {}
  explicit Assayer(const Weights& weights);

  // The static score, centipawns from White's view. Does not allocate.
  Centipawns Score(const Position& position) const;

  // Verdict, reasons, plans, cautions, ledger and claims. The score and its
  // reasons are static; the verdict, threats, temptations and advice are
  // proved.
  Explanation Explain(const Position& position,
                      const ExplainOptions& options = {}) const;

  const Weights& weights() const { return weights_; }
  // Sixteen hexadecimal digits that tell these weights from others.
  const std::string& weights_fingerprint() const { return fingerprint_; }

 private:
  const Weights weights_;
  const std::string fingerprint_;
};

}  // namespace assay

#endif  // ASSAY_EXPLAIN_ASSAYER_H_
