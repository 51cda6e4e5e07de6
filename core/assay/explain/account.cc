#include "assay/explain/account.h"

#include "assay/explain/entry_text.h"
#include "assay/explain/line_text.h"
#include "assay/explain/reasons.h"

namespace assay {
namespace {

// A change below this is small change.
constexpr Centipawns kLeastChange = 15;

// More than most ledgers have.
constexpr std::size_t kUsualEntries = 64;

std::vector<ExplainedEntry> InWords(const Facts& facts, const Ledger& ledger,
                                    ClaimTable& table) {
  std::vector<ExplainedEntry> entries;
  entries.reserve(ledger.entries.size());
  for (const Entry& entry : ledger.entries) {
    ExplainedEntry explained;
    explained.entry = entry;
    explained.phrase = EntryPhrase(facts, entry, ledger.claims.data());
    explained.said = Say("entry", entry.side, explained.phrase);
    for (std::uint32_t i = 0; i < entry.claim_count; ++i) {
      table.Add(ledger.claims[entry.first_claim + i], explained.claims);
    }
    entries.push_back(std::move(explained));
  }
  return entries;
}

const Reason* Find(const std::vector<Reason>& reasons, Topic topic) {
  for (const Reason& reason : reasons) {
    if (reason.topic == topic) return &reason;
  }
  return nullptr;
}

// What a side has in a topic that a line has turned its way, where that may be
// by the other's getting worse in it.
Message PhraseOfChange(const Reason& reason, bool by_others_loss) {
  if (by_others_loss && reason.topic == Topic::kKingSafety) {
    return Say("change.play_against_king");
  }
  if (by_others_loss && reason.topic == Topic::kDangers) {
    return Say("change.targets");
  }
  return reason.phrase;
}

}  // namespace

Account MakeAccount(const Facts& facts, const Weights& weights,
                    ClaimTable& table) {
  Ledger ledger;
  ledger.entries.reserve(kUsualEntries);
  ledger.claims.reserve(kUsualEntries);
  MakeLedger(facts, weights, ledger);
  // What follows adds about as many again.
  table.Reserve(2 * ledger.claims.size());
  Account account;
  account.score_cp = ledger.score_cp;
  account.ledger = InWords(facts, ledger, table);
  account.reasons = FindReasons(facts, account.ledger, table);
  return account;
}

std::vector<Reason> ReasonsAfter(const Position& position,
                                 const std::vector<Move>& line,
                                 const Weights& weights, ClaimTable& table) {
  const Position end = AfterLine(position, line);
  const Facts facts(end);
  ClaimTable end_table;
  std::vector<Reason> reasons = MakeAccount(facts, weights, end_table).reasons;
  for (Reason& reason : reasons) {
    reason.entries.clear();  // they are the other position's
    ClaimRefs refs;
    for (const std::uint32_t ref : reason.claims) {
      Claim claim = end_table.claims()[ref];
      claim.line.insert(claim.line.begin(), line.begin(), line.end());
      table.Add(claim, refs);
    }
    reason.claims = refs;
  }
  return reasons;
}

std::optional<Change> FindChange(const Position& position,
                                 const std::vector<Reason>& before, Side side,
                                 const std::vector<Move>& line,
                                 const Weights& weights, ClaimTable& table) {
  ClaimTable scratch;  // most of what holds after the line is not said
  const std::vector<Reason> after =
      ReasonsAfter(position, line, weights, scratch);
  const Reason* most = nullptr;
  Centipawns gain = kLeastChange - 1;
  bool by_others_loss = false;
  for (const Reason& reason : after) {
    // Whose move it is changes with every move; a surplus taken back says
    // nothing of what was done.
    if (reason.topic == Topic::kMove || reason.drawish ||
        reason.favours() != side || reason.phrase.empty()) {
      continue;
    }
    const Reason* was = Find(before, reason.topic);
    const auto moved_of = [&](Side whose) {
      const Centipawns then = was == nullptr ? 0 : was->of[Index(whose)];
      return Sign(side) * (reason.of[Index(whose)] - then);
    };
    const Centipawns by_own = moved_of(side);
    const Centipawns by_others = moved_of(Other(side));
    if (by_own + by_others <= gain) continue;
    gain = by_own + by_others;
    by_others_loss = by_others > by_own;
    most = &reason;
  }
  if (most == nullptr) return std::nullopt;
  Change change{gain, PhraseOfChange(*most, by_others_loss), {}};
  for (const std::uint32_t ref : most->claims) {
    table.Add(scratch.claims()[ref], change.claims);
  }
  return change;
}

}  // namespace assay
