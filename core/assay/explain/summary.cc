// Says what balances what, by the reasons' phrases: at most three for the side
// that is better, two for the other; reasons too light to matter are left out.
#include "assay/explain/summary.h"

#include <cstdlib>
#include <string_view>

#include "assay/explain/race_text.h"
#include "assay/explain/words.h"

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

std::string PhrasesOf(const std::vector<const Reason*>& reasons) {
  std::vector<std::string> phrases;
  phrases.reserve(reasons.size());
  for (const Reason* reason : reasons) phrases.push_back(reason->phrase);
  return Join(phrases);
}

void NoteClaims(const std::vector<const Reason*>& reasons, ClaimRefs& refs) {
  for (const Reason* reason : reasons) Merge(reason->claims, refs);
}

// "Black has the sounder pawns; White has the bishop pair and more space."
std::string Balance(const std::vector<Reason>& all, ClaimRefs& refs) {
  std::vector<std::string> halves;
  // The side with the heaviest reason is named first.
  const Side first = all.empty() ? Side::kWhite : all.front().favours();
  for (const Side side : {first, Other(first)}) {
    const auto reasons = ReasonsFor(all, side, kMostAgainst);
    if (reasons.empty()) continue;
    halves.push_back(std::string(Name(side)) + " has " + PhrasesOf(reasons));
    NoteClaims(reasons, refs);
  }
  if (halves.empty()) return "Nothing of weight sets the sides apart.";
  return halves.size() == 1 ? halves[0] + ", which weighs little."
                            : halves[0] + "; " + halves[1] + ".";
}

std::string WithoutFullStop(std::string text) {
  if (!text.empty() && text.back() == '.') text.pop_back();
  return text;
}

// "White is slightly better, with more space. ... Black has the bishop pair in
// return."
void AddAdvantage(const Verdict& verdict, const std::vector<Reason>& all,
                  bool in_detail, std::vector<std::string>& sentences,
                  ClaimRefs& refs) {
  const Side better = *verdict.favours;
  const auto reasons = ReasonsFor(all, better, kMostFor);
  const auto against = ReasonsFor(all, Other(better), kMostAgainst);
  std::string first = WithoutFullStop(verdict.text);
  if (!reasons.empty()) first += ", with " + PhrasesOf(reasons);
  sentences.push_back(first + ".");
  // The weightiest reason in full: squares are what a student remembers.
  for (const Reason* reason : reasons) {
    if (!in_detail || !reason->adds_detail) continue;
    sentences.push_back(reason->text);
    break;
  }
  if (!against.empty()) {
    sentences.push_back(std::string(Name(Other(better))) + " has " +
                        PhrasesOf(against) + " in return.");
  }
  NoteClaims(reasons, refs);
  NoteClaims(against, refs);
}

// "Then White is slightly better": after the line that was shown.
std::string Then(std::string sentence) {
  constexpr std::string_view kThePosition = "The position ";
  if (sentence.compare(0, kThePosition.size(), kThePosition) == 0) {
    sentence[0] = 't';
  }
  return "Then " + sentence;
}

}  // namespace

void Summarise(const Race& race, const std::vector<Reason>& then,
               ClaimTable& table, Explanation& explanation) {
  const Verdict& verdict = explanation.verdict;
  const std::vector<Reason>& reasons =
      then.empty() ? explanation.reasons : then;
  ClaimRefs& refs = explanation.summary_claims;
  Merge(verdict.claims, refs);
  std::vector<std::string> sentences;
  if (!explanation.cautions.empty() && explanation.cautions.front().leads) {
    sentences.push_back(explanation.cautions.front().text);
    Merge(explanation.cautions.front().claims, refs);
  }
  const std::size_t verdict_at = sentences.size();
  const bool mates =
      explanation.proof.has_value() && explanation.proof->mate_in != 0;
  if (verdict.over || mates) {
    sentences.push_back(verdict.text);
  } else if (!verdict.favours.has_value()) {
    sentences.push_back(verdict.text);
    sentences.push_back(Balance(reasons, refs));
  } else {
    AddAdvantage(verdict, reasons, then.empty(), sentences, refs);
  }
  if (!then.empty()) sentences[verdict_at] = Then(sentences[verdict_at]);
  if (then.empty() && !verdict.over && !mates) {
    sentences.push_back(
        RaceText(race, explanation.position, explanation.plans, table, refs));
  }
  for (const std::string& sentence : sentences) {
    if (sentence.empty()) continue;
    if (!explanation.summary.empty()) explanation.summary += ' ';
    explanation.summary += sentence;
  }
}

}  // namespace assay
