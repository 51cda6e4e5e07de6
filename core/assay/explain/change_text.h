// The words of one change of the ledger.
#ifndef ASSAY_EXPLAIN_CHANGE_TEXT_H_
#define ASSAY_EXPLAIN_CHANGE_TEXT_H_

#include <vector>

#include "assay/explain/ledger_change.h"
#include "assay/explain/message.h"

namespace assay {

// An entry of one of the two ledgers.
struct ChangedEntry {
  const Entry* entry = nullptr;
  Message phrase;  // "a hole on f4"
  // What it is about holds in the other position, too: only its weight is
  // another, or nothing. (A hole that no piece can use counts nothing.)
  bool holds_in_both = false;
};

// What changed in one term of one side. Entries that are the same in both
// positions are in none of the lists.
struct ChangeGroup {
  const Pairing& pairing;
  TermId term;
  Side side;
  Centipawns change_cp = 0;         // White's view
  std::vector<ChangedEntry> gone;   // before alone
  std::vector<ChangedEntry> added;  // after alone

  bool Good() const { return Sign(side) * change_cp > 0; }
};

struct ChangeText {
  Message said;  // a sentence
  Message noun;
  // What the text says besides what the entries' claims do.
  std::vector<Claim> claims_before;
  std::vector<Claim> claims_after;
};

ChangeText TellChange(const ChangeGroup& group);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_CHANGE_TEXT_H_
