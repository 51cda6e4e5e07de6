// In words: what bounded search found besides the verdict.
//
// Each function makes the sentences of one part of an explanation from an
// answer of proof/questions.h, and adds the claims that they stand on.
#ifndef ASSAY_EXPLAIN_PROVED_H_
#define ASSAY_EXPLAIN_PROVED_H_

#include <optional>
#include <vector>

#include "assay/explain/explanation.h"
#include "assay/proof/temptations.h"

namespace assay {

// What all parts are told of: the position, what was counted of it, and what
// was proved.
struct Proved {
  const Position& position;
  const std::vector<Reason>& reasons;  // all, heaviest first
  Centipawns static_cp = 0;
  const Weights& weights;
  const Proof& proof;
};

// What search found where the count alone misleads, first among the cautions
// (proved_caution.cc); what hangs by a count of captures is left to it. Returns
// the line that it shows, after which counting can be trusted again, or all of
// the proof's where that is never settled for long; empty where the two agree,
// or where it mates.
std::vector<Move> LeadWithProof(const Proved& proved, ClaimTable& table,
                                std::vector<Caution>& cautions);

// What the side would do if it were to move now (threats.cc).
Threat TellThreat(const Position& position, Side side, const Win& win,
                  ClaimTable& table);

// Why a natural move fails (temptation_text.cc).
Temptation TellTemptation(const Position& position, const TemptingMove& move,
                          ClaimTable& table);

// A plan of the side to move that can be begun now: search holds its first move
// to be the best, or all but as good.
struct PlanToBegin {
  std::uint32_t index = 0;  // of the explanation's plans
  bool is_best = false;
};

// What to play first and why (advice.cc): what wins something, else what begins
// the plan, else what search prefers; `threats` are both sides'. `second` is
// the proof of the best play without the best move; none where there is no
// other move.
std::optional<Advice> TellAdvice(const Proved& proved,
                                 const std::optional<Proof>& second,
                                 const std::vector<Threat>& threats,
                                 const std::vector<ToldPlan>& plans,
                                 const std::optional<PlanToBegin>& plan,
                                 ClaimTable& table);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_PROVED_H_
