#include "assay/explain/if_ignored_text.h"

#include "assay/explain/account.h"
#include "assay/explain/line_text.h"
#include "assay/explain/win_text.h"
#include "assay/explain/words.h"
#include "assay/facts/claim_makers.h"

namespace assay {

void TellIfIgnored(const Position& position, const std::vector<Reason>& before,
                   const Weights& weights, ClaimTable& table, ToldPlan& told) {
  const Plan& plan = told.plan;
  const std::vector<Move>& line = plan.if_ignored.line;
  if (line.empty()) return;
  const std::string side = Name(plan.side);
  const std::string if_develops =
      "If " + std::string(Name(Other(plan.side))) + " just develops, ";
  std::string text;
  ClaimRefs refs;
  if (plan.if_ignored.material > 0) {
    int moves = 0;
    Side turn = position.side_to_move();
    for (std::size_t i = 0; i < line.size(); ++i, turn = Other(turn)) {
      if (turn == plan.side) ++moves;
    }
    text = side + " wins " + GainText(plan.if_ignored.material) + " in " +
           NumberText(moves) + (moves == 1 ? " move: " : " moves: ") +
           LineText(position, line) + ".";
  } else {
    const auto change =
        FindChange(position, before, plan.side, line, weights, table);
    if (!change.has_value()) return;
    text = side + " gets " + change->phrase + ": " + LineText(position, line) +
           ".";
    refs = change->claims;
  }
  told.ignored_line = line;
  told.ignored_text = if_develops + text;
  told.ignored_claims = refs;
  table.Add(LineClaim(position, plan.side, line), told.ignored_claims);
}

}  // namespace assay
