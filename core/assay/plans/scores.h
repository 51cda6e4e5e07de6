// The lasting scores of the positions that a search for plans comes to. Finders
// and appraisals play the same moves again and again.
#ifndef ASSAY_PLANS_SCORES_H_
#define ASSAY_PLANS_SCORES_H_

#include <array>
#include <cstddef>
#include <cstdint>

#include "assay/rules/position.h"
#include "assay/terms/ledger.h"

namespace assay {

// Remembers the last score of each place. A position is known by its hash:
// two with one hash among a few hundred are one chance in 10^14.
class Scores {
 public:
  // White's view; always of the same weights.
  Centipawns Of(const Position& position, const Weights& weights) {
    Entry& entry = entries_[position.hash() % kEntries];
    if (!entry.used || entry.hash != position.hash()) {
      entry = {position.hash(), LastingScoreOf(position, weights), true};
    }
    return entry.score;
  }

 private:
  // A search for plans asks for some hundred scores.
  static constexpr std::size_t kEntries = 256;
  struct Entry {
    std::uint64_t hash = 0;
    Centipawns score = 0;
    bool used = false;
  };
  std::array<Entry, kEntries> entries_{};
};

}  // namespace assay

#endif  // ASSAY_PLANS_SCORES_H_
