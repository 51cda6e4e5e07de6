#include "bench/worth/tally.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace assay::bench {
namespace {

constexpr std::size_t kHeldBack = 20000;
// Slices: phases, centres, material.
constexpr int kPhases = 3;
constexpr int kCentres = 6;

double LossOf(double score, double points, double scale) {
  const double odds = score / scale;
  return std::log1p(std::exp(-std::abs(odds))) +
         (odds > 0 ? (1 - points) * odds : -points * odds);
}

// What an ending's scale factor leaves of every other term.
bool TakesBack(TermId id) {
  switch (id) {
    case TermId::kExactResult:
    case TermId::kWrongBishop:
    case TermId::kHeldQueen:
    case TermId::kHeldRookEnding:
    case TermId::kOppositeBishops:
    case TermId::kRookEnding:
    case TermId::kTooLittleToWin:
    case TermId::kBlockedPosition:
    case TermId::kDeadPosition:
      return true;
    default:
      return false;
  }
}

// The terms' shares of the score as it is, scale factors spread over them: left
// out, a term takes its part of what was taken back along.
void SpreadTakenBack(TermScores& scores) {
  int taken = 0;
  for (int i = 0; i < kTerms; ++i) {
    if (TakesBack(static_cast<TermId>(i))) taken += scores.cp[i];
  }
  const int before = scores.score_cp - taken;
  if (taken == 0 || before == 0) return;
  const double kept = static_cast<double>(scores.score_cp) / before;
  for (int i = 0; i < kTerms; ++i) {
    if (TakesBack(static_cast<TermId>(i))) continue;
    scores.cp[i] = static_cast<int>(std::lround(scores.cp[i] * kept));
  }
}

int ChangedBy(int cp, int change) {
  if (change == Tally::kOut) return -cp;
  const int half = static_cast<int>(std::lround(cp / 2.0));
  return change == Tally::kHalf ? -half : half;
}

bool SameMaterial(const Position& position) {
  return std::all_of(std::begin(kAllKinds), std::end(kAllKinds),
                     [&](PieceKind kind) {
                       return PopCount(position.Pieces(Side::kWhite, kind)) ==
                              PopCount(position.Pieces(Side::kBlack, kind));
                     });
}

// How often a replicate draws a game: Poisson with mean 1, by a fixed mixing of
// both numbers, so that a run can be repeated.
int Draws(std::uint64_t game, int replicate) {
  std::uint64_t x =
      game * 0x9E3779B97F4A7C15ULL +
      static_cast<std::uint64_t>(replicate) * 0xD1B54A32D192ED03ULL;
  x ^= x >> 32;
  x *= 0xBF58476D1CE4E5B9ULL;
  x ^= x >> 29;
  x *= 0x94D049BB133111EBULL;
  x ^= x >> 32;
  const double uniform = static_cast<double>(x >> 11) * 0x1.0p-53;
  // Cumulated: e^-1 (1, 1, 1/2, 1/6, 1/24, 1/120).
  constexpr double kUpTo[] = {0.36787944, 0.73575888, 0.91969860,
                              0.98101184, 0.99634015, 0.99940582};
  int draws = 0;
  for (const double limit : kUpTo) draws += uniform >= limit ? 1 : 0;
  return draws;
}

}  // namespace

double Expected(double score, double scale) {
  return 1 / (1 + std::exp(-score / scale));
}

double Histogram::positions() const {
  double sum = 0;
  for (const std::uint32_t n : positions_) sum += n;
  return sum;
}

double Histogram::points() const {
  double sum = 0;
  for (const double p : points_) sum += p;
  return sum;
}

double Histogram::Loss(double scale) const {
  double sum = 0;
  double all = 0;
  for (std::size_t i = 0; i < positions_.size(); ++i) {
    const double n = positions_[i];
    if (n == 0) continue;
    all += n;
    sum += n * LossOf(static_cast<double>(i) - kLimit, points_[i] / n, scale);
  }
  return all == 0 ? 0 : sum / all;
}

double Histogram::ConstantLoss() const {
  const double mean = positions() == 0 ? 0.5 : points() / positions();
  if (mean <= 0 || mean >= 1) return 0;
  return -mean * std::log(mean) - (1 - mean) * std::log(1 - mean);
}

double Histogram::BestScale() const {
  constexpr double kGolden = 0.6180339887498949;
  double low = 20;
  double high = 2000;
  while (high - low > 0.05) {
    const double left = high - kGolden * (high - low);
    const double right = low + kGolden * (high - low);
    if (Loss(left) < Loss(right)) {
      high = right;
    } else {
      low = left;
    }
  }
  return (low + high) / 2;
}

Histogram::Bucket Histogram::Sum(int first, int last, double scale) const {
  Bucket bucket;
  for (int score = std::max(first, -kLimit); score <= std::min(last, kLimit);
       ++score) {
    const double n = positions_[score + kLimit];
    bucket.positions += n;
    bucket.points += points_[score + kLimit];
    bucket.expected += n * Expected(score, scale);
  }
  return bucket;
}

Tally::Tally(const Weights& weights)
    : weights_(weights),
      changed_(static_cast<std::size_t>(kTerms) * kChanges),
      products_(static_cast<std::size_t>(kTerms) * kTerms),
      replicate_loss_(static_cast<std::size_t>(kTerms) * kReplicates) {
  for (const char* name : {"middlegame", "between", "ending"}) {
    slices_.push_back({"phase", name, {}});
  }
  for (int i = 0; i < kCentres; ++i) {
    slices_.push_back({"structure",
                       std::string(Name(static_cast<Centre>(i))) + " centre",
                       {}});
  }
  slices_.push_back({"material", "equal", {}});
  slices_.push_back({"material", "unequal", {}});
}

void Tally::Add(const Sample& sample) {
  const Facts facts(sample.position);
  Seen seen{ScoreByTerm(facts, weights_), sample.points, 0};
  SpreadTakenBack(seen.terms);
  if (games_ == 0 || sample.game != game_) {
    game_ = sample.game;
    ++games_;
  }
  seen.game = games_;
  const int score = seen.terms.score_cp;
  const int phase = facts.phase() >= 171 ? 0 : facts.phase() >= 86 ? 1 : 2;
  slices_[phase].scores.Add(score, sample.points);
  slices_[kPhases + static_cast<int>(facts.centre())].scores.Add(score,
                                                                 sample.points);
  slices_[kPhases + kCentres + (SameMaterial(sample.position) ? 0 : 1)]
      .scores.Add(score, sample.points);
  Count(seen);
  if (pilot_scale_ == 0) {
    held_.push_back(seen);
    if (held_.size() < kHeldBack) return;
    pilot_scale_ = scores_.BestScale();
    for (const Seen& held : held_) CountGame(held);
    held_.clear();
    held_.shrink_to_fit();
    return;
  }
  CountGame(seen);
}

void Tally::Count(const Seen& seen) {
  const int score = seen.terms.score_cp;
  scores_.Add(score, seen.points);
  int fired[kTerms];
  int n = 0;
  for (int i = 0; i < kTerms; ++i) {
    entries_[i] += static_cast<std::uint64_t>(seen.terms.entries[i]);
    if (seen.terms.entries[i] > 0) fired[n++] = i;
    const int cp = seen.terms.cp[i];
    for (int change = 0; change < kChanges; ++change) {
      changed_[i * kChanges + change].Add(score + ChangedBy(cp, change),
                                          seen.points);
    }
  }
  for (int a = 0; a < n; ++a) {
    const int i = fired[a];
    const double cp = seen.terms.cp[i];
    ++fires_[i];
    size_[i] += std::abs(cp);
    sum_[i] += cp;
    for (int b = 0; b <= a; ++b) {
      products_[i * kTerms + fired[b]] += cp * seen.terms.cp[fired[b]];
    }
  }
}

void Tally::CountGame(const Seen& seen) {
  if (!game_open_ || seen.game != open_game_) {
    CloseGame();
    open_game_ = seen.game;
    game_open_ = true;
  }
  const int score = seen.terms.score_cp;
  const double as_is = LossOf(score, seen.points, pilot_scale_);
  ++game_positions_;
  for (int i = 0; i < kTerms; ++i) {
    const int cp = seen.terms.cp[i];
    if (cp == 0) continue;
    game_loss_[i] += LossOf(score - cp, seen.points, pilot_scale_) - as_is;
  }
}

void Tally::CloseGame() {
  if (!game_open_) return;
  for (int r = 0; r < kReplicates; ++r) {
    const int draws = Draws(open_game_, r);
    if (draws == 0) continue;
    replicate_positions_[r] += draws * game_positions_;
    for (int i = 0; i < kTerms; ++i) {
      replicate_loss_[i * kReplicates + r] += draws * game_loss_[i];
    }
  }
  game_positions_ = 0;
  std::fill(std::begin(game_loss_), std::end(game_loss_), 0.0);
  game_open_ = false;
}

void Tally::Finish() {
  scale_ = scores_.BestScale();
  if (pilot_scale_ == 0) {
    pilot_scale_ = scale_;
    for (const Seen& held : held_) CountGame(held);
    held_.clear();
  }
  CloseGame();
}

std::vector<Tally::TermWorth> Tally::Terms() const {
  std::vector<TermWorth> terms;
  const double all = scores_.positions();
  const double as_is = scores_.Loss(scale_);
  const auto product = [&](int i, int j) {
    return products_[std::max(i, j) * kTerms + std::min(i, j)];
  };
  const auto variance = [&](int i) {
    return product(i, i) / all - sum_[i] / all * (sum_[i] / all);
  };
  for (int i = 0; i < kTerms; ++i) {
    if (fires_[i] == 0) continue;
    TermWorth worth;
    worth.id = static_cast<TermId>(i);
    worth.fires = static_cast<double>(fires_[i]) / all;
    worth.entries = static_cast<double>(entries_[i]) / all;
    worth.size = size_[i] / static_cast<double>(fires_[i]);
    for (int change = 0; change < kChanges; ++change) {
      worth.loss[change] = changed_[i * kChanges + change].Loss(scale_) - as_is;
    }
    std::vector<double> losses;
    for (int r = 0; r < kReplicates; ++r) {
      if (replicate_positions_[r] > 0) {
        losses.push_back(replicate_loss_[i * kReplicates + r] /
                         replicate_positions_[r]);
      }
    }
    std::sort(losses.begin(), losses.end());
    if (!losses.empty()) {
      worth.low = losses[losses.size() * 25 / 1000];
      worth.high = losses[(losses.size() * 975 - 1) / 1000];
    }
    for (int j = 0; j < kTerms; ++j) {
      if (j == i || fires_[j] == 0) continue;
      const double spread = std::sqrt(variance(i) * variance(j));
      if (!(spread > 0)) continue;
      const double covariance =
          product(i, j) / all - sum_[i] / all * (sum_[j] / all);
      worth.companions.push_back({static_cast<TermId>(j), covariance / spread});
    }
    std::sort(worth.companions.begin(), worth.companions.end(),
              [](const auto& a, const auto& b) {
                return std::abs(a.correlation) > std::abs(b.correlation);
              });
    if (worth.companions.size() > 3) worth.companions.resize(3);
    terms.push_back(std::move(worth));
  }
  std::sort(terms.begin(), terms.end(), [](const auto& a, const auto& b) {
    return a.loss[kOut] > b.loss[kOut];
  });
  return terms;
}

}  // namespace assay::bench
