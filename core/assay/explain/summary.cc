// Says what balances what, by the reasons' phrases: at most three for the side
// that is better, two for the other; reasons too light to matter are left out.
#include "assay/explain/summary.h"

#include <cstdlib>

#include "assay/explain/race_text.h"
#include "assay/explain/verdict.h"

namespace assay {
namespace {

// A reason below this is not worth a word in a summary.
constexpr Centipawns kWorthSaying = 10;
constexpr std::size_t kMostFor = 3;
constexpr std::size_t kMostAgainst = 2;

std::vector<const Reason*> ReasonsFor(const std::vector<Reason>& reasons,
                                      Side side, std::size_t most) {
  std::vector<const Reason*> chosen;
  for (const Reason& reason : reasons) {
    if (reason.favours() == side && std::abs(reason.value_cp) >= kWorthSaying &&
        !reason.phrase.empty() && chosen.size() < most) {
      chosen.push_back(&reason);
    }
  }
  return chosen;
}

Message PhrasesOf(const std::vector<const Reason*>& reasons) {
  std::vector<Message> phrases;
  phrases.reserve(reasons.size());
  for (const Reason* reason : reasons) phrases.push_back(reason->phrase);
  return And(std::move(phrases));
}

void NoteClaims(const std::vector<const Reason*>& reasons, ClaimRefs& refs) {
  for (const Reason* reason : reasons) Merge(reason->claims, refs);
}

// "Black has the sounder pawns; White has the bishop pair and more space."
Message Balance(const std::vector<Reason>& all, ClaimRefs& refs) {
  std::vector<Message> halves;
  // The side with the heaviest reason is named first.
  const Side first = all.empty() ? Side::kWhite : all.front().favours();
  for (const Side side : {first, Other(first)}) {
    const auto reasons = ReasonsFor(all, side, kMostAgainst);
    if (reasons.empty()) continue;
    halves.push_back(Say("has", side, PhrasesOf(reasons)));
    NoteClaims(reasons, refs);
  }
  if (halves.empty()) return Say("summary.nothing");
  return halves.size() == 1 ? Say("summary.little", halves[0])
                            : List("list.semicolon", std::move(halves));
}

// "White is slightly better, with more space. ... Black has the bishop pair in
// return."
void AddAdvantage(const Verdict& verdict, const std::vector<Reason>& all,
                  bool in_detail, std::vector<Message>& sentences,
                  ClaimRefs& refs) {
  const Side better = *verdict.favours;
  const auto reasons = ReasonsFor(all, better, kMostFor);
  const auto against = ReasonsFor(all, Other(better), kMostAgainst);
  const Message clause = ClauseOf(verdict.said);
  sentences.push_back(Sentence(
      reasons.empty() ? clause
                      : Say("summary.with", clause, PhrasesOf(reasons))));
  // The weightiest reason in full: squares are what a student remembers.
  for (const Reason* reason : reasons) {
    if (!in_detail || !reason->adds_detail) continue;
    sentences.push_back(reason->said);
    break;
  }
  if (!against.empty()) {
    sentences.push_back(
        Sentence(Say("summary.return", Other(better), PhrasesOf(against))));
  }
  NoteClaims(reasons, refs);
  NoteClaims(against, refs);
}

}  // namespace

void Summarise(const Race& race, const std::vector<Reason>& then,
               ClaimTable& table, Explanation& explanation) {
  const Verdict& verdict = explanation.verdict;
  const std::vector<Reason>& reasons =
      then.empty() ? explanation.reasons : then;
  ClaimRefs& refs = explanation.summary_claims;
  Merge(verdict.claims, refs);
  std::vector<Message> sentences;
  if (!explanation.cautions.empty() && explanation.cautions.front().leads) {
    sentences.push_back(explanation.cautions.front().said);
    Merge(explanation.cautions.front().claims, refs);
  }
  const std::size_t verdict_at = sentences.size();
  const bool mates =
      explanation.proof.has_value() && explanation.proof->mate_in != 0;
  if (verdict.over || mates) {
    sentences.push_back(verdict.said);
  } else if (!verdict.favours.has_value()) {
    sentences.push_back(verdict.said);
    sentences.push_back(Sentence(Balance(reasons, refs)));
  } else {
    AddAdvantage(verdict, reasons, then.empty(), sentences, refs);
  }
  if (!then.empty()) {  // after the line that was shown
    sentences[verdict_at] =
        Sentence(Say("summary.then", ClauseOf(sentences[verdict_at])));
  }
  if (then.empty() && !verdict.over && !mates && verdict.nag != kDrawish) {
    Message race_said =
        RaceText(race, explanation.position, explanation.plans, table, refs);
    if (!race_said.empty()) sentences.push_back(std::move(race_said));
  }
  explanation.summary_said = List("list.sentences", std::move(sentences));
}

}  // namespace assay
