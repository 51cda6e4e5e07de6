// What is kept of the positions: a fixed amount, however many there are.
//
// Losses are found after the reading, from counts by score: for the score as
// it is and for the score with a term left out, halved or made half as large
// again. Only the bootstrap needs the scale before; it takes that of the first
// positions, which are held back until there are enough of them.
#ifndef ASSAY_BENCH_WORTH_TALLY_H_
#define ASSAY_BENCH_WORTH_TALLY_H_

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "assay/terms/ledger.h"
#include "bench/worth/samples.h"

namespace assay::bench {

// Positions and points by score; scores beyond the ends count as the ends.
class Histogram {
 public:
  static constexpr int kLimit = 1500;

  Histogram() : positions_(2 * kLimit + 1), points_(2 * kLimit + 1) {}
  void Add(int score, double points) {
    const int at = (score < -kLimit  ? -kLimit
                    : score > kLimit ? kLimit
                                     : score) +
                   kLimit;
    ++positions_[at];
    points_[at] += points;
  }
  double positions() const;
  double points() const;
  // Natural log, draws half, a pawn-odds scale: see Expected().
  double Loss(double scale) const;
  // The loss of always expecting the mean.
  double ConstantLoss() const;
  // The scale with the least loss.
  double BestScale() const;
  // Sums over scores from `first` to `last`.
  struct Bucket {
    double positions = 0;
    double points = 0;
    double expected = 0;
  };
  Bucket Sum(int first, int last, double scale) const;

 private:
  std::vector<std::uint32_t> positions_;
  std::vector<double> points_;
};

// White's expected points: 1 / (1 + exp(-score / scale)).
double Expected(double score, double scale);

// Slices that losses are told by.
struct Slice {
  std::string group;  // "phase", "structure", "material"
  std::string name;
  Histogram scores;
};

class Tally {
 public:
  static constexpr int kReplicates = 200;
  enum Change { kOut, kHalf, kMore, kChanges };

  explicit Tally(const Weights& weights);

  void Add(const Sample& sample);
  // After the last sample.
  void Finish();

  struct TermWorth {
    TermId id = TermId::kMaterial;
    double fires = 0;            // share of positions with an entry
    double entries = 0;          // a position
    double size = 0;             // mean of |sum| where it fires, centipawns
    double loss[kChanges] = {};  // more loss than as it is
    double low = 0;              // 95% interval of loss[kOut], by game
    double high = 0;
    struct Companion {
      TermId id = TermId::kMaterial;
      double correlation = 0;
    };
    std::vector<Companion> companions;  // most correlated first, three
  };
  std::vector<TermWorth> Terms() const;  // those that fired, most worth first

  const Histogram& scores() const { return scores_; }
  double scale() const { return scale_; }
  const Weights& weights() const { return weights_; }
  const std::vector<Slice>& slices() const { return slices_; }
  std::uint64_t games() const { return games_; }

 private:
  struct Seen {
    TermScores terms;
    double points;
    std::uint64_t game;
  };

  void Count(const Seen& seen);
  void CountGame(const Seen& seen);
  void CloseGame();

  const Weights weights_;
  Histogram scores_;
  std::vector<Histogram> changed_;  // [term * kChanges + change]
  std::vector<Slice> slices_;
  std::uint64_t fires_[kTerms] = {};
  std::uint64_t entries_[kTerms] = {};
  double size_[kTerms] = {};
  double sum_[kTerms] = {};
  std::vector<double> products_;  // [term * kTerms + term]
  std::vector<Seen> held_;        // until the scale is known
  std::string game_;
  std::uint64_t games_ = 0;
  double pilot_scale_ = 0;
  double scale_ = 0;
  std::uint64_t open_game_ = 0;
  bool game_open_ = false;
  double game_positions_ = 0;
  double game_loss_[kTerms] = {};
  std::vector<double> replicate_loss_;  // [term * kReplicates + replicate]
  double replicate_positions_[kReplicates] = {};
};

}  // namespace assay::bench

#endif  // ASSAY_BENCH_WORTH_TALLY_H_
