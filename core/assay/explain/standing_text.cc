#include "assay/explain/standing_text.h"

#include <algorithm>
#include <cstdlib>
#include <iterator>
#include <string_view>

#include "assay/explain/verdict.h"

namespace assay {

Standpoint StandpointOf(const Proof& proof) {
  return {proof.score_cp, proof.mate_in};
}

namespace {

struct StandingRow {
  std::string_view is;
  std::string_view was;
};

// By the size of the verdict's step.
constexpr StandingRow kRows[] = {{"stands.equal", "stood.equal"},
                                 {"verdict.slight", "stood.slight"},
                                 {"verdict.clear", "stood.clear"},
                                 {"verdict.decisive", "stood.decisive"},
                                 {"verdict.crushing", "stood.crushing"}};

Message StandpointClause(const Standpoint& standpoint, bool past) {
  const int mate = standpoint.mate_in;
  const int step = mate == 0 ? VerdictStep(standpoint.score_cp) : 0;
  const bool white = mate > 0 || (mate == 0 && step > 0);
  const Side side = white ? Side::kWhite : Side::kBlack;
  if (mate != 0) {
    return Say(past ? "stood.mates" : "verdict.mates", side, std::abs(mate));
  }
  const StandingRow& row = kRows[std::min<std::size_t>(
      static_cast<std::size_t>(std::abs(step)), std::size(kRows) - 1)];
  const std::string_view id = past ? row.was : row.is;
  return step == 0 ? Say(id) : Say(id, side);
}

}  // namespace

Message StandingSentence(const Standpoint& before, const Standpoint& after) {
  Message is = StandpointClause(after, false);
  if (StandpointClause(before, false) == is) {
    return Sentence(Say("stands.as_before", std::move(is)));
  }
  return Sentence(
      Say("stands.now", StandpointClause(before, true), std::move(is)));
}

}  // namespace assay
