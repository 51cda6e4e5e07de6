// Where terms put what they find: a ledger, or a running score alone.
//
// Each theme is one function template over the sink, instantiated for each,
// so that the score-only path adds the very integers of the ledger. A term
// calls Add() once an instance, with a function that names squares and claims;
// only the ledger calls it.
#ifndef ASSAY_TERMS_SINK_H_
#define ASSAY_TERMS_SINK_H_

#include <chrono>
#include <utility>

#include "assay/terms/ledger.h"

namespace assay {

class ScoreSink {
 public:
  explicit ScoreSink(int phase) : phase_(phase) {}

  // `value` is from the side's own view.
  template <class Describe>
  void Add(TermId /*term*/, Side side, Tapered value, Describe&& /*describe*/) {
    score_cp_ += Sign(side) * AtPhase(value, phase_);
  }
  Centipawns score_cp() const { return score_cp_; }

 private:
  const int phase_;
  Centipawns score_cp_ = 0;
};

// A score of what lasts; see IsMomentary.
class LastingSink {
 public:
  explicit LastingSink(int phase) : sink_(phase) {}

  template <class Describe>
  void Add(TermId term, Side side, Tapered value, Describe&& describe) {
    if (IsMomentary(term)) return;
    sink_.Add(term, side, value, std::forward<Describe>(describe));
  }
  Centipawns score_cp() const { return sink_.score_cp(); }

 private:
  ScoreSink sink_;
};

// What an entry is about, filled in by the term that adds it.
class Details {
 public:
  Details(Entry& entry, std::vector<Claim>& claims)
      : entry_(entry), claims_(claims) {}

  void Squares(Bitboard squares) { entry_.squares |= squares; }
  void Add(Claim claim) {
    claims_.push_back(std::move(claim));
    ++entry_.claim_count;
  }

 private:
  Entry& entry_;
  std::vector<Claim>& claims_;
};

class LedgerSink {
 public:
  LedgerSink(int phase, Ledger& ledger) : phase_(phase), ledger_(ledger) {}

  // An entry that rounds to nothing is left out.
  template <class Describe>
  void Add(TermId term, Side side, Tapered value, Describe&& describe) {
    const Centipawns value_cp = Sign(side) * AtPhase(value, phase_);
    if (value_cp == 0) return;
    Entry entry;
    entry.term = term;
    entry.side = side;
    entry.value_cp = value_cp;
    entry.tapered = value * Sign(side);
    entry.first_claim = static_cast<std::uint32_t>(ledger_.claims.size());
    Details details(entry, ledger_.claims);
    std::forward<Describe>(describe)(details);
    ledger_.entries.push_back(entry);
    ledger_.score_cp += value_cp;
  }
  Centipawns score_cp() const { return ledger_.score_cp; }

 private:
  const int phase_;
  Ledger& ledger_;
};

// Sums by term; see ScoreByTerm.
class TermSink {
 public:
  TermSink(int phase, TermScores& scores) : phase_(phase), scores_(scores) {}

  template <class Describe>
  void Add(TermId term, Side side, Tapered value, Describe&& /*describe*/) {
    const Centipawns value_cp = Sign(side) * AtPhase(value, phase_);
    if (value_cp == 0) return;
    scores_.cp[Index(term)] += value_cp;
    ++scores_.entries[Index(term)];
    scores_.score_cp += value_cp;
  }
  Centipawns score_cp() const { return scores_.score_cp; }

 private:
  const int phase_;
  TermScores& scores_;
};

// Times what leads to each entry; see AddTermCosts.
class CostSink {
 public:
  using Clock = std::chrono::steady_clock;

  CostSink(int phase, TermCosts& costs)
      : phase_(phase), costs_(costs), last_(Clock::now()) {}

  template <class Describe>
  void Add(TermId term, Side side, Tapered value, Describe&& /*describe*/) {
    score_cp_ += Sign(side) * AtPhase(value, phase_);
    const auto spent = std::chrono::duration_cast<std::chrono::nanoseconds>(
        Clock::now() - last_);
    costs_.nanoseconds[Index(term)] +=
        static_cast<std::uint64_t>(spent.count());
    ++costs_.entries[Index(term)];
    last_ = Clock::now();
  }
  Centipawns score_cp() const { return score_cp_; }

 private:
  const int phase_;
  TermCosts& costs_;
  Clock::time_point last_;
  Centipawns score_cp_ = 0;
};

// The themes, in the files of these names.
template <class Sink>
void AddMaterial(const Facts& facts, const Weights& weights, Sink& sink);
template <class Sink>
void AddPawns(const Facts& facts, const Weights& weights, Sink& sink);
template <class Sink>
void AddPassedPawns(const Facts& facts, const Weights& weights, Sink& sink);
template <class Sink>
void AddPieces(const Facts& facts, const Weights& weights, Sink& sink);
template <class Sink>
void AddMinorPieces(const Facts& facts, const Weights& weights, Sink& sink);
template <class Sink>
void AddRooks(const Facts& facts, const Weights& weights, Sink& sink);
template <class Sink>
void AddDangers(const Facts& facts, const Weights& weights, Sink& sink);
template <class Sink>
void AddKing(const Facts& facts, const Weights& weights, Sink& sink);
template <class Sink>
void AddKingAttack(const Facts& facts, const Weights& weights, Sink& sink);
template <class Sink>
void AddSpaceAndTime(const Facts& facts, const Weights& weights, Sink& sink);
template <class Sink>
void AddLoneKing(const Facts& facts, const Weights& weights, Sink& sink);
template <class Sink>
void AddEndings(const Facts& facts, const Weights& weights, Sink& sink);

// Instantiates a theme for all sinks; at the end of the theme's file.
#define ASSAY_INSTANTIATE_THEME(AddTheme)                             \
  template void AddTheme(const Facts&, const Weights&, ScoreSink&);   \
  template void AddTheme(const Facts&, const Weights&, LedgerSink&);  \
  template void AddTheme(const Facts&, const Weights&, LastingSink&); \
  template void AddTheme(const Facts&, const Weights&, TermSink&);    \
  template void AddTheme(const Facts&, const Weights&, CostSink&)

}  // namespace assay

#endif  // ASSAY_TERMS_SINK_H_
