// What is kept of the positions: a fixed amount, however many there are.
//
// Losses are found after the reading, from counts by score: for the score as
// it is and for the score with a part (a term, or all terms of a theme) left
// out, halved or made half as large again. Only the bootstrap needs the scale
// before; it takes that of the first positions, which are held back until there
// are enough of them.
#ifndef ASSAY_BENCH_WORTH_TALLY_H_
#define ASSAY_BENCH_WORTH_TALLY_H_

#include <cstdint>
#include <string>
#include <vector>

#include "assay/terms/ledger.h"
#include "bench/own_term.h"
#include "bench/worth/histogram.h"
#include "bench/worth/samples.h"

namespace assay::bench {

// What can be left out of the score.
struct Part {
  std::string name;   // "doubled_pawns", "space and centre"
  std::string title;  // for headings
  std::string definition;
  std::string theme;  // empty for a term of one's own
};

// Positions that losses and calibrations are told of apart.
struct Slice {
  std::string group;  // "phase", "centre", "structure", ...
  std::string name;
  Histogram scores;
};

class Tally {
 public:
  static constexpr int kReplicates = 200;
  enum Change { kOut, kHalf, kMore, kChanges };

  explicit Tally(const Weights& weights, const std::vector<OwnTerm>& own = {});

  void Add(const Sample& sample);
  // After the last sample.
  void Finish();

  struct Worth {
    int part = 0;                // see PartOf()
    double fires = 0;            // share of positions with an entry
    double entries = 0;          // a position
    double size = 0;             // mean of |sum| where it fires, centipawns
    double loss[kChanges] = {};  // more loss than as it is
    double low = 0;              // 95% interval of loss[kOut], by game
    double high = 0;
    // By how much its weights would be multiplied at the least loss: where a
    // parabola through half, as it is and half again has it. 0: none.
    double best_factor = 0;
    struct Companion {
      int part = 0;
      double correlation = 0;
    };
    std::vector<Companion> companions;  // most correlated first, three
  };
  // Those that fired, most worth first.
  std::vector<Worth> Terms() const;
  std::vector<Worth> Themes() const;
  const Part& PartOf(int part) const { return parts_[part]; }

  const Histogram& scores() const { return scores_; }
  double scale() const { return scale_; }
  const Weights& weights() const { return weights_; }
  const std::vector<Slice>& slices() const { return slices_; }
  std::uint64_t games() const { return games_; }

 private:
  struct Seen {
    std::vector<int> cp;       // of each part
    std::vector<int> entries;  // of each part
    int score = 0;
    double points = 0;
    std::uint64_t game = 0;
  };

  Seen Look(const Facts& facts);
  void AddToSlices(const Facts& facts, int score, double points);
  void Count(const Seen& seen);
  void CountGame(const Seen& seen);
  void CloseGame();
  Worth WorthOf(int part) const;
  void FindCompanions(Worth& worth) const;
  std::vector<Worth> Sorted(int first, int last) const;

  const Weights weights_;
  const std::vector<OwnTerm> own_;
  OwnEntries own_entries_;
  std::vector<Part> parts_;    // terms, terms of one's own, themes
  int terms_ = 0;              // how many of them are no themes
  std::vector<int> theme_of_;  // of each term: its theme's part, or -1
  Histogram scores_;
  std::vector<Histogram> changed_;  // [part * kChanges + change]
  std::vector<Slice> slices_;
  std::vector<std::uint64_t> fires_;
  std::vector<std::uint64_t> entries_;
  std::vector<double> size_;
  std::vector<double> sum_;
  std::vector<double> products_;  // [term * terms_ + term]
  std::vector<Seen> held_;        // until the scale is known
  std::string game_;
  std::uint64_t games_ = 0;
  double pilot_scale_ = 0;
  double scale_ = 0;
  std::uint64_t open_game_ = 0;
  bool game_open_ = false;
  double game_positions_ = 0;
  std::vector<double> game_loss_;
  std::vector<double> replicate_loss_;  // [part * kReplicates + replicate]
  double replicate_positions_[kReplicates] = {};
};

}  // namespace assay::bench

#endif  // ASSAY_BENCH_WORTH_TALLY_H_
