#include "assay/explain/standing_text.h"

#include <cstdlib>

#include "assay/explain/verdict.h"
#include "assay/explain/words.h"

namespace assay {

Standpoint StandpointOf(const Proof& proof) {
  return {proof.score_cp, proof.mate_in};
}

namespace {

enum class Tense { kPast, kPresent };

std::string StandpointText(const Standpoint& standpoint, Tense tense) {
  const bool past = tense == Tense::kPast;
  const int mate = standpoint.mate_in;
  const int step = mate == 0 ? VerdictStep(standpoint.score_cp) : 0;
  const bool white = mate > 0 || (mate == 0 && step > 0);
  const std::string who = Name(white ? Side::kWhite : Side::kBlack);
  if (mate != 0) {
    const int moves = std::abs(mate);
    return who + (past ? " had mate in " : " mates in ") +
           std::to_string(moves) + (moves == 1 ? " move" : " moves");
  }
  switch (std::abs(step)) {
    case 0:
      return past ? "the sides stood about equal"
                  : "the sides stand about equal";
    case 1:
      return who + (past ? " was" : " is") + " slightly better";
    case 2:
      return who + (past ? " was" : " is") + " clearly better";
    case 3:
      return who + (past ? " had" : " has") + " a decisive advantage";
    default:
      return who + (past ? " had" : " has") + " a crushing advantage";
  }
}

}  // namespace

std::string StandingSentence(const Standpoint& before,
                             const Standpoint& after) {
  const std::string is = StandpointText(after, Tense::kPresent);
  if (StandpointText(before, Tense::kPresent) == is) {
    return "As before, " + is + ".";
  }
  return "Before, " + StandpointText(before, Tense::kPast) + "; now " + is +
         ".";
}

}  // namespace assay
