#include "assay/explain/ledger_change.h"

#include <algorithm>
#include <cstdlib>
#include <map>

#include "assay/explain/change_text.h"
#include "assay/explain/entry_text.h"
#include "assay/facts/claim_lists.h"

namespace assay {
namespace {

using Key = std::pair<TermId, Side>;
using Groups = std::map<Key, ChangeGroup>;

ChangeGroup& GroupOf(const Pairing& pairing, const Entry& entry,
                     Groups& groups) {
  const Key key{entry.term, entry.side};
  return groups
      .try_emplace(key, ChangeGroup{pairing, entry.term, entry.side, 0, {}, {}})
      .first->second;
}

// The same instance, worth the same: of no interest.
bool IsSame(const ChangedEntry& a, const ChangedEntry& b) {
  return a.entry->value_cp == b.entry->value_cp && a.phrase == b.phrase;
}

void RemoveUnchanged(ChangeGroup& group) {
  for (auto gone = group.gone.begin(); gone != group.gone.end();) {
    const auto same = std::find_if(
        group.added.begin(), group.added.end(),
        [&](const ChangedEntry& added) { return IsSame(*gone, added); });
    if (same == group.added.end()) {
      ++gone;
      continue;
    }
    group.added.erase(same);
    gone = group.gone.erase(gone);
  }
}

// Whether what the entry is about, its first claim, is among all that hold of
// the other position.
void NoteWhatHolds(const Snapshot& own, const std::vector<Claim>& other,
                   std::vector<ChangedEntry>& list) {
  for (ChangedEntry& changed : list) {
    if (changed.entry->claim_count == 0) continue;
    const Claim& claim = own.ledger.claims[changed.entry->first_claim];
    changed.holds_in_both =
        std::find(other.begin(), other.end(), claim) != other.end();
  }
}

void AddClaims(const Snapshot& snapshot, const std::vector<ChangedEntry>& list,
               ClaimTable& table, ClaimRefs& refs) {
  for (const ChangedEntry& changed : list) {
    const Entry& entry = *changed.entry;
    for (std::uint32_t i = 0; i < entry.claim_count; ++i) {
      table.Add(snapshot.ledger.claims[entry.first_claim + i], refs);
    }
  }
}

}  // namespace

bool IsFelt(const LedgerChange& change) {
  return !change.term.has_value() ||
         (change.term != TermId::kTempo && std::abs(change.change_cp) >= kFelt);
}

Snapshot::Snapshot(const Position& position, const Weights& weights)
    : facts(position) {
  MakeLedger(facts, weights, ledger);
}

Square Pairing::Origin(Square square) const {
  for (const auto& [from, to] : moved) {
    if (to == square) return from;
  }
  const Piece piece = after.position().At(square);
  return before.position().At(square) == piece ? square : kNoSquare;
}

std::vector<LedgerChange> DiffLedgers(const Pairing& pairing,
                                      ClaimTable& claims_before,
                                      ClaimTable& claims_after) {
  Groups groups;
  for (const Entry& entry : pairing.before.ledger.entries) {
    ChangeGroup& group = GroupOf(pairing, entry, groups);
    group.change_cp -= entry.value_cp;
    group.gone.push_back(
        {&entry, EntryPhrase(pairing.before.facts, entry,
                             pairing.before.ledger.claims.data())});
  }
  for (const Entry& entry : pairing.after.ledger.entries) {
    ChangeGroup& group = GroupOf(pairing, entry, groups);
    group.change_cp += entry.value_cp;
    group.added.push_back(
        {&entry, EntryPhrase(pairing.after.facts, entry,
                             pairing.after.ledger.claims.data())});
  }
  const std::vector<Claim> all_before = AllClaims(pairing.before.facts);
  const std::vector<Claim> all_after = AllClaims(pairing.after.facts);
  std::vector<LedgerChange> changes;
  for (auto& [key, group] : groups) {
    if (group.change_cp == 0) continue;
    RemoveUnchanged(group);
    NoteWhatHolds(pairing.before, all_after, group.gone);
    NoteWhatHolds(pairing.after, all_before, group.added);
    LedgerChange change;
    change.term = group.term;
    change.side = group.side;
    change.change_cp = group.change_cp;
    for (const auto& gone : group.gone) change.squares |= gone.entry->squares;
    for (const auto& added : group.added) {
      change.squares |= added.entry->squares;
    }
    ChangeText told = TellChange(group);
    change.said = std::move(told.said);
    change.noun = std::move(told.noun);
    AddClaims(pairing.before, group.gone, claims_before, change.claims_before);
    AddClaims(pairing.after, group.added, claims_after, change.claims);
    for (const Claim& claim : told.claims_before) {
      claims_before.Add(claim, change.claims_before);
    }
    for (const Claim& claim : told.claims_after) {
      claims_after.Add(claim, change.claims);
    }
    changes.push_back(std::move(change));
  }
  std::stable_sort(changes.begin(), changes.end(),
                   [](const LedgerChange& a, const LedgerChange& b) {
                     return std::abs(a.change_cp) > std::abs(b.change_cp);
                   });
  return changes;
}

}  // namespace assay
