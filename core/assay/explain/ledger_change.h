// How two ledgers differ, in words: what a move, or an edit of the board,
// changes.
#ifndef ASSAY_EXPLAIN_LEDGER_CHANGE_H_
#define ASSAY_EXPLAIN_LEDGER_CHANGE_H_

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "assay/explain/claim_table.h"
#include "assay/explain/message.h"
#include "assay/facts/facts.h"
#include "assay/terms/ledger.h"

namespace assay {

// Smaller changes are not felt.
inline constexpr Centipawns kFelt = 5;

struct LedgerChange {
  // None: something that no term counts; change_cp is then 0.
  std::optional<TermId> term;
  Side side = Side::kWhite;  // whose feature it is
  Centipawns change_cp = 0;  // after minus before, White's view
  Bitboard squares = 0;
  std::string text;  // a sentence; `said` put into words (wording.h)
  Message said;
  Message noun;      // the same as a part of a sentence: "the hole on f4"
  ClaimRefs claims;  // about the position after
  ClaimRefs claims_before;  // about the position before
};

// Whether a reader would feel it. The tempo is passed on by every move.
bool IsFelt(const LedgerChange& change);

// A position with what was counted of it. Keeps a reference to the position.
struct Snapshot {
  Snapshot(const Position& position, const Weights& weights);
  Snapshot(Position&&, const Weights&) = delete;

  const Position& position() const { return facts.position(); }

  Facts facts;
  Ledger ledger;
};

// Two positions, and which pieces of the first stand where in the second:
// those that are not named stand where they stood.
struct Pairing {
  const Snapshot& before;
  const Snapshot& after;
  std::vector<std::pair<Square, Square>> moved;

  // Where the piece on a square of the second stood in the first; kNoSquare
  // where it was not there.
  Square Origin(Square square) const;
};

// One change for each term and side whose entries' sum differs, largest first.
// They add up to the change of the score. The claims go into the two tables.
std::vector<LedgerChange> DiffLedgers(const Pairing& pairing,
                                      ClaimTable& claims_before,
                                      ClaimTable& claims_after);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_LEDGER_CHANGE_H_
