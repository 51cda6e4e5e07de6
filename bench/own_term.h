// A term that is not in the catalogue, to be costed and valued beside those
// that are: before it becomes one of them, or instead.
//
// examples/term is one, in a project of its own. A term needs no change to the
// library for this: it is a function of Facts, as those of the catalogue are.
#ifndef ASSAY_BENCH_OWN_TERM_H_
#define ASSAY_BENCH_OWN_TERM_H_

#include <functional>
#include <string>
#include <vector>

#include "assay/facts/facts.h"

namespace assay::bench {

// One instance on the board.
struct OwnEntry {
  Side side = Side::kWhite;  // whose feature it is
  Centipawns value_cp = 0;   // White's view, tapered and rounded; never 0
  Bitboard squares = 0;
};

// Where a term puts what it finds, with the rounding of the ledger.
class OwnEntries {
 public:
  // `value` is from the side's own view. What rounds to nothing is left out.
  void Add(Side side, Tapered value, Bitboard squares) {
    const Centipawns value_cp = Sign(side) * AtPhase(value, phase_);
    if (value_cp == 0) return;
    found_.push_back({side, value_cp, squares});
    score_cp_ += value_cp;
  }
  void Restart(const Facts& facts) {
    phase_ = facts.phase();
    found_.clear();
    score_cp_ = 0;
  }
  const std::vector<OwnEntry>& found() const { return found_; }
  Centipawns score_cp() const { return score_cp_; }

 private:
  int phase_ = 0;
  std::vector<OwnEntry> found_;
  Centipawns score_cp_ = 0;
};

struct OwnTerm {
  std::string name;        // lower case, unlike those of the catalogue
  std::string title;       // for headings
  std::string definition;  // when an entry arises, and for whom
  std::function<void(const Facts&, OwnEntries&)> find;
};

// The programs term_costs and assay_worth, with terms of one's own beside those
// of the catalogue. The arguments are those of main(); so is what is returned.
int MeasureCosts(int argc, char** argv, const std::vector<OwnTerm>& own = {});
int MeasureWorth(int argc, char** argv, const std::vector<OwnTerm>& own = {});

}  // namespace assay::bench

#endif  // ASSAY_BENCH_OWN_TERM_H_
