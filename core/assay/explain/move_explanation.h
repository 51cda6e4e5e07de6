// What a move gains and what it gives up.
//
//   const Assayer assayer;
//   MoveExplanation told = ExplainMove(assayer, position, move);
//   told.summary        // "12. g4 attacks the knight on f6. It gives up: ..."
//   told.concessions    // changes of the ledger, and what no term counts
//
// Texts are in the language and for the audience of the options, each the
// message beside it, put into words. Claims are about the position before the
// move; those about what comes after have the move first in their line.
#ifndef ASSAY_EXPLAIN_MOVE_EXPLANATION_H_
#define ASSAY_EXPLAIN_MOVE_EXPLANATION_H_

#include <optional>
#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/explain/ledger_change.h"

namespace assay {

// What is gained and given up from one position to another: counted changes,
// which add up to the change of the score, then what no term counts.
struct Balance {
  std::vector<LedgerChange> gains;
  std::vector<LedgerChange> concessions;
};

// Where the move is a capture that is answered on its square: what it comes to.
struct Settled {
  explicit Settled(const Position& at_end) : position(at_end) {}

  std::vector<Move> line;  // the move and the captures after it
  Position position;       // after them
  Centipawns score_cp = 0;
  Balance balance;  // against the position before the move
};

struct MoveExplanation {
  MoveExplanation(const Position& from, Move made)
      : position(from), move(made), after(from.After(made)) {}

  Position position;  // before the move
  Move move;
  Position after;
  Centipawns score_before_cp = 0;
  Centipawns score_after_cp = 0;
  Balance balance;
  std::optional<Settled> settled;
  std::vector<ToldPlan> starts;  // the mover's; steps from `after`
  std::vector<ToldPlan> stops;   // the opponent's; steps from `position`
  std::vector<ToldPlan> allows;  // the opponent's; steps from `after`
  // The reply that wins something; its line starts at `after`.
  std::optional<Threat> reply_to_fear;
  std::optional<Proof> proof;  // its line has the move first
  std::string summary;
  Message summary_said;
  ClaimRefs summary_claims;
  std::vector<Claim> claims;
};

// The move is legal. With static_only nothing is searched: no proof and no
// reply to fear.
MoveExplanation ExplainMove(const Assayer& assayer, const Position& position,
                            Move move, const ExplainOptions& options = {});

}  // namespace assay

#endif  // ASSAY_EXPLAIN_MOVE_EXPLANATION_H_
