#include "assay/explain/ranking.h"

#include <algorithm>
#include <cstdlib>

#include "assay/explain/reasons.h"

namespace assay {
namespace {

// True, and weighed, but nothing that a player would name first.
bool IsFinePoint(const Reason& reason) {
  return reason.topic == Topic::kPawnNumbers || reason.topic == Topic::kCover ||
         reason.topic == Topic::kMove;
}

// What more active pieces may come of.
bool MakesActive(Topic topic) {
  switch (topic) {
    case Topic::kWeakPawns:
    case Topic::kHoles:
    case Topic::kMinorPieces:
    case Topic::kRooks:
    case Topic::kSpace:
    case Topic::kCentre:
    case Topic::kDevelopment:
      return true;
    default:
      return false;
  }
}

// What weighs less than this part of the activity does not make it.
constexpr int kPartOfActivity = 3;

int Weight(const Reason& reason) { return reason.rank_cp; }

// As a cause: the better minor pieces and rooks mostly come of something else
// themselves, the pawns or space.
int CauseWeight(const Reason& reason) {
  const bool follows =
      reason.topic == Topic::kMinorPieces || reason.topic == Topic::kRooks;
  return follows ? Weight(reason) / 2 : Weight(reason);
}

// The heaviest reason that activity may come of; null where none is worth
// telling.
const Reason* CauseOf(const Reason& activity,
                      const std::vector<Reason>& reasons) {
  const Reason* cause = nullptr;
  if (std::abs(activity.value_cp) < kLightestReason) return cause;
  for (const Reason& reason : reasons) {
    if (!MakesActive(reason.topic) ||
        std::abs(reason.value_cp) < kLightestReason ||
        std::abs(reason.value_cp) * kPartOfActivity <
            std::abs(activity.value_cp) ||
        reason.favours() != activity.favours()) {
      continue;
    }
    if (cause == nullptr || CauseWeight(reason) > CauseWeight(*cause)) {
      cause = &reason;
    }
  }
  return cause;
}

}  // namespace

bool CountsByHalf(TermId term) {
  return IsMomentary(term) && term != TermId::kKingZone;
}

Centipawns RankOf(Topic topic, const Group& group) {
  Centipawns twice = 0;
  for (const ExplainedEntry* entry : group.entries) {
    const Entry& counted = entry->entry;
    twice += counted.value_cp * (CountsByHalf(counted.term) ? 1 : 2);
  }
  // What is momentary may outweigh the rest.
  const Centipawns rank = std::max(twice * Sign(group.favours()) / 2, 0);
  return topic == Topic::kSpace ? rank / 2 : rank;
}

void RankReasons(std::vector<Reason>& reasons) {
  const auto activity = std::find_if(
      reasons.begin(), reasons.end(),
      [](const Reason& reason) { return reason.topic == Topic::kActivity; });
  const Reason* cause =
      activity == reasons.end() ? nullptr : CauseOf(*activity, reasons);
  // Topics, since reasons move while they are sorted; each has one reason.
  const Topic lead = cause == nullptr ? Topic::kMove : cause->topic;
  const int joint =
      cause == nullptr ? 0 : std::max(Weight(*cause), Weight(*activity));
  const auto rank = [&](const Reason& reason) {
    const bool joined = cause != nullptr && (reason.topic == lead ||
                                             reason.topic == Topic::kActivity);
    return joined ? joint : Weight(reason);
  };
  // Nothing of equal weight comes between the two.
  const auto place = [&](const Reason& reason) {
    if (cause == nullptr || reason.topic == lead) return 0;
    return reason.topic == Topic::kActivity ? 1 : 2;
  };
  std::stable_sort(reasons.begin(), reasons.end(),
                   [&](const Reason& a, const Reason& b) {
                     if (IsFinePoint(a) != IsFinePoint(b))
                       return IsFinePoint(b);
                     if (rank(a) != rank(b)) return rank(a) > rank(b);
                     return place(a) < place(b);
                   });
}

}  // namespace assay
