// What ledger entries are about: those of one topic are said together.
#ifndef ASSAY_EXPLAIN_TOPIC_H_
#define ASSAY_EXPLAIN_TOPIC_H_

#include <cstdint>

#include "assay/terms/term.h"

namespace assay {

// What entries can be about. Both sides' entries of a topic make one reason.
enum class Topic : std::uint8_t {
  kMaterial,
  kPawnNumbers,  // what the number of pawns does for knights and rooks
  kBishopPair,
  kWeakPawns,
  kHoles,
  kPassedPawns,
  kActivity,
  kMinorPieces,
  kCover,  // minor pieces behind pawns
  kRooks,
  kDangers,
  kKingSafety,
  kKingActivity,
  kSpace,
  kCentre,
  kDevelopment,
  kMove,
  kEnding,
};
inline constexpr int kTopics = static_cast<int>(Topic::kEnding) + 1;

Topic TopicOf(TermId term);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_TOPIC_H_
