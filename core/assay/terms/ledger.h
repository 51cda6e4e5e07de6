// The ledger: all that the evaluator found, entry by entry.
#ifndef ASSAY_TERMS_LEDGER_H_
#define ASSAY_TERMS_LEDGER_H_

#include <cstdint>
#include <vector>

#include "assay/base/score.h"
#include "assay/facts/claim.h"
#include "assay/facts/facts.h"
#include "assay/terms/term.h"

namespace assay {

// One term applied to one instance on the board.
struct Entry {
  TermId term = TermId::kMaterial;
  Side side = Side::kWhite;  // whose feature it is
  Centipawns value_cp = 0;   // White's view, tapered and rounded; never 0
  Tapered tapered;           // White's view, before tapering
  Bitboard squares = 0;
  // Its claims: Ledger::claims[first_claim] and those that follow.
  std::uint32_t first_claim = 0;
  std::uint32_t claim_count = 0;
};

// The entries' values add up to the score, exactly.
struct Ledger {
  std::vector<Entry> entries;
  std::vector<Claim> claims;
  Centipawns score_cp = 0;  // White's view

  void Clear() {
    entries.clear();
    claims.clear();
    score_cp = 0;
  }
};

// The ledger of a position. Reusing `ledger` saves its allocations.
void MakeLedger(const Facts& facts, const Weights& weights, Ledger& ledger);

// The same score without entries, without allocation.
Centipawns ScoreOf(const Position& position, const Weights& weights);

// The same without momentary terms: what a plan of several moves is valued by.
Centipawns LastingScoreOf(const Position& position, const Weights& weights);

// The score term by term, without claims: White's centipawns and the number of
// entries that are not 0 of each term. For authors of terms.
struct TermScores {
  Centipawns cp[kTerms] = {};
  int entries[kTerms] = {};
  Centipawns score_cp = 0;
};
TermScores ScoreByTerm(const Facts& facts, const Weights& weights);

// What each term costs: how often it made an entry, and the time from the entry
// before (or the start) to each of its own, checks that found nothing included.
// For authors of terms; the clock itself costs some 20 ns an entry.
struct TermCosts {
  std::uint64_t entries[kTerms] = {};
  std::uint64_t nanoseconds[kTerms] = {};
};
void AddTermCosts(const Facts& facts, const Weights& weights, TermCosts& costs);

}  // namespace assay

#endif  // ASSAY_TERMS_LEDGER_H_
