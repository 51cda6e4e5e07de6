// Ledgers in tests: made from a position, and sums of some of their entries.
#ifndef ASSAY_TESTS_SUPPORT_LEDGERS_H_
#define ASSAY_TESTS_SUPPORT_LEDGERS_H_

#include <initializer_list>

#include "assay/facts/facts.h"
#include "assay/rules/position.h"
#include "assay/terms/ledger.h"

namespace assay {
namespace testing_support {

inline Ledger LedgerOf(const Position& position, const Weights& weights = {}) {
  Ledger ledger;
  MakeLedger(Facts(position), weights, ledger);
  return ledger;
}

// What a side's entries of some terms come to, from that side's own view.
inline Centipawns SumFor(const Position& position, Side side,
                         std::initializer_list<TermId> terms) {
  Centipawns sum = 0;
  for (const Entry& entry : LedgerOf(position).entries) {
    for (const TermId term : terms) {
      if (entry.term == term && entry.side == side) sum += entry.value_cp;
    }
  }
  return sum * Sign(side);
}

// The score from a side's own view.
inline Centipawns ScoreFor(const Position& position, Side side) {
  return ScoreOf(position, Weights()) * Sign(side);
}

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_LEDGERS_H_
