#include "assay/explain/reasons.h"

#include <algorithm>
#include <cstdlib>

#include "assay/explain/group.h"
#include "assay/explain/ranking.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

bool Weightier(const ExplainedEntry* a, const ExplainedEntry* b) {
  return std::abs(a->entry.value_cp) > std::abs(b->entry.value_cp);
}

std::vector<const ExplainedEntry*> Select(const Group& group, Side side,
                                          int sign) {
  std::vector<const ExplainedEntry*> selected;
  for (const ExplainedEntry* entry : group.entries) {
    const bool fits = entry->entry.side == side &&
                      entry->entry.value_cp * Sign(side) * sign > 0;
    if (fits) selected.push_back(entry);
  }
  std::stable_sort(selected.begin(), selected.end(), Weightier);
  return selected;
}

}  // namespace

std::vector<const ExplainedEntry*> Group::Good(Side side) const {
  return Select(*this, side, 1);
}

std::vector<const ExplainedEntry*> Group::Bad(Side side) const {
  return Select(*this, side, -1);
}

const Claim* Group::Find(const ExplainedEntry& entry, ClaimKind kind) const {
  for (const std::uint32_t ref : entry.claims) {
    if (claims[ref].kind == kind) return &claims[ref];
  }
  return nullptr;
}

std::vector<Reason> FindReasons(const Facts& facts,
                                const std::vector<ExplainedEntry>& ledger,
                                ClaimTable& table) {
  std::vector<Reason> reasons;
  for (int t = 0; t < kTopics; ++t) {
    const auto topic = static_cast<Topic>(t);
    Group group{facts, table.claims(), {}, 0};
    Reason reason;
    for (std::size_t i = 0; i < ledger.size(); ++i) {
      if (TopicOf(ledger[i].entry.term) != topic) continue;
      group.entries.push_back(&ledger[i]);
      group.value_cp += ledger[i].entry.value_cp;
      reason.of[Index(ledger[i].entry.side)] += ledger[i].entry.value_cp;
      reason.entries.push_back(static_cast<std::uint32_t>(i));
      Merge(ledger[i].claims, reason.claims);
    }
    if (group.value_cp == 0) continue;
    reason.topic = topic;
    reason.value_cp = group.value_cp;
    reason.rank_cp = RankOf(topic, group);
    reason.drawish =
        topic == Topic::kEnding && group.Good(group.favours()).empty();
    reason.phrase = PhraseOf(topic, group);
    reason.said = SentenceOf(topic, group);
    reason.adds_detail =
        topic != Topic::kMaterial && topic != Topic::kMove &&
        topic != Topic::kPawnNumbers && topic != Topic::kCover &&
        ClauseOf(reason.said) != Say("has", group.favours(), reason.phrase);
    if (topic == Topic::kKingSafety) {
      // The sentence says where the king stands; its entries need not.
      table.Add(MaterialClaim(facts, Other(group.favours()), PieceKind::kKing),
                reason.claims);
    }
    reasons.push_back(std::move(reason));
  }
  RankReasons(reasons);
  return reasons;
}

}  // namespace assay
