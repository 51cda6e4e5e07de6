// A group of entries about one topic, as the sentence writers see it.
#ifndef ASSAY_EXPLAIN_GROUP_H_
#define ASSAY_EXPLAIN_GROUP_H_

#include <vector>

#include "assay/explain/explanation.h"
#include "assay/explain/message.h"
#include "assay/explain/topic.h"
#include "assay/facts/facts.h"

namespace assay {

struct Group {
  const Facts& facts;
  const std::vector<Claim>& claims;
  std::vector<const ExplainedEntry*> entries;  // in the ledger's order
  Centipawns value_cp = 0;                     // White's view

  Side favours() const { return value_cp > 0 ? Side::kWhite : Side::kBlack; }

  // Entries of a side's features whose value is good (or bad) for that side,
  // the weightiest first.
  std::vector<const ExplainedEntry*> Good(Side side) const;
  std::vector<const ExplainedEntry*> Bad(Side side) const;

  // The first claim of a kind among an entry's; null where it has none.
  const Claim* Find(const ExplainedEntry& entry, ClaimKind kind) const;
};

// What the side that the group favours has, as an object of "has".
Message PhraseOf(Topic topic, const Group& group);

// The group as a sentence, with squares.
Message SentenceOf(Topic topic, const Group& group);

// For Topic::kEnding (ending_sentences.cc); a clause may be of several
// sentences but for the last full stop.
Message EndingPhrase(const Group& group);
Message EndingClause(const Group& group);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_GROUP_H_
