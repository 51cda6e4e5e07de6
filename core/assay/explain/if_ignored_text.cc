#include "assay/explain/if_ignored_text.h"

#include "assay/explain/account.h"
#include "assay/explain/line_text.h"
#include "assay/explain/win_text.h"
#include "assay/facts/claim_makers.h"

namespace assay {

void TellIfIgnored(const Position& position, const std::vector<Reason>& before,
                   const Weights& weights, ClaimTable& table, ToldPlan& told) {
  const Plan& plan = told.plan;
  const std::vector<Move>& line = plan.if_ignored.line;
  if (line.empty()) return;
  const Side other = Other(plan.side);
  const Centipawns gain = LedgerGain(position, plan.side, line, weights);
  Message clause;
  ClaimRefs refs;
  if (plan.if_ignored.material > 0) {
    int moves = 0;
    Side turn = position.side_to_move();
    for (std::size_t i = 0; i < line.size(); ++i, turn = Other(turn)) {
      if (turn == plan.side) ++moves;
    }
    clause =
        Say("if_ignored.wins", other, plan.side,
            GainOf(plan.if_ignored.material), moves, LineText(position, line));
  } else {
    if (gain <= 0) return;  // one thing for another
    const auto change =
        FindChange(position, before, plan.side, line, weights, table);
    if (!change.has_value()) return;
    clause = Say("if_ignored.gets", other, plan.side, change->phrase,
                 LineText(position, line));
    refs = change->claims;
  }
  told.ignored_line = line;
  told.ignored_gain = gain;
  told.ignored_said = Sentence(clause);
  told.ignored_claims = refs;
  table.Add(LineClaim(position, plan.side, line), told.ignored_claims);
}

}  // namespace assay
