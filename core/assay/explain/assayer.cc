#include "assay/explain/assayer.h"

#include <cstdlib>
#include <utility>

#include "assay/explain/cautions.h"
#include "assay/explain/entry_text.h"
#include "assay/explain/reasons.h"
#include "assay/explain/structure.h"
#include "assay/explain/summary.h"
#include "assay/explain/verdict.h"
#include "assay/facts/claim_lists.h"
#include "assay/proof/search.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

// What a mate counts as where its last moves cannot be shown: far beyond any
// cut-off, and no more than a material edge that large.
constexpr Centipawns kUnshownMate = 2000;

std::vector<ExplainedEntry> InWords(const Facts& facts, const Ledger& ledger,
                                    ClaimTable& table) {
  std::vector<ExplainedEntry> entries;
  entries.reserve(ledger.entries.size());
  for (const Entry& entry : ledger.entries) {
    ExplainedEntry explained;
    explained.entry = entry;
    explained.phrase = EntryPhrase(facts, entry, ledger.claims.data());
    explained.text = std::string(Name(entry.side)) + ": " + explained.phrase;
    for (std::uint32_t i = 0; i < entry.claim_count; ++i) {
      table.Add(ledger.claims[entry.first_claim + i], explained.claims);
    }
    entries.push_back(std::move(explained));
  }
  return entries;
}

// Reasons come heaviest first.
void KeepWorthwhile(std::size_t most, std::vector<Reason>& reasons) {
  const auto light = [](const Reason& reason) {
    return std::abs(reason.value_cp) < kLightestReason;
  };
  while (reasons.size() > 1 && light(reasons.back())) reasons.pop_back();
  if (reasons.size() > most) {
    reasons.erase(reasons.begin() + static_cast<std::ptrdiff_t>(most),
                  reasons.end());
  }
}

// Whether the line ends in mate by the side that the search says mates.
bool EndsInMate(const Position& position, const std::vector<Move>& line) {
  Position at = position;
  for (const Move move : line) at = at.After(move);
  return IsCheckmate(at);
}

Proof Prove(const Position& position, const Weights& weights,
            const ExplainOptions& options) {
  SearchLimits limits;
  limits.nodes = options.proof_nodes;
  limits.cancelled = options.cancelled;
  Proof proof = Search(position, weights, limits);
  // A mate is claimed with its moves or not at all.
  if (proof.mate_in != 0 && !EndsInMate(position, proof.line)) {
    proof.score_cp = proof.mate_in > 0 ? kUnshownMate : -kUnshownMate;
    proof.mate_in = 0;
  }
  return proof;
}

}  // namespace

Assayer::Assayer(const Weights& weights)
    : weights_(weights), fingerprint_(Fingerprint(weights)) {}

Centipawns Assayer::Score(const Position& position) const {
  return ScoreOf(position, weights_);
}

Explanation Assayer::Explain(const Position& position,
                             const ExplainOptions& options) const {
  Explanation explanation(position);
  const Facts facts(explanation.position);
  Ledger ledger;
  MakeLedger(facts, weights_, ledger);
  ClaimTable table;
  explanation.score_cp = ledger.score_cp;
  explanation.ledger = InWords(facts, ledger, table);
  explanation.reasons = FindReasons(facts, explanation.ledger, table);
  explanation.structure = DescribeStructure(facts, table);
  explanation.cautions = FindCautions(facts, table);
  const bool over = !HasLegalMove(position) || IsInsufficientMaterial(position);
  if (options.proof_nodes > 0 && !over) {
    explanation.proof = Prove(position, weights_, options);
    AddProof(facts, *explanation.proof, explanation.score_cp, table,
             explanation.cautions);
    explanation.verdict =
        FindProvedVerdict(facts, *explanation.proof, explanation.score_cp,
                          explanation.reasons, explanation.cautions, table);
  } else {
    explanation.verdict =
        FindVerdict(facts, explanation.score_cp, explanation.reasons,
                    explanation.cautions, table);
  }
  Summarise(explanation);
  KeepWorthwhile(options.max_reasons, explanation.reasons);
  if (options.all_claims) {
    for (const Claim& claim : AllClaims(facts)) table.Add(claim);
  }
  explanation.claims = table.Take();
  return explanation;
}

}  // namespace assay
