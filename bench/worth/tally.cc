#include "bench/worth/tally.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iterator>

#include "assay/facts/structures.h"

namespace assay::bench {
namespace {

constexpr std::size_t kHeldBack = 20000;
constexpr int kPhases = 3;
constexpr int kCentres = 6;
// Where each group of slices begins.
constexpr int kCentreSlices = kPhases;
constexpr int kMaterialSlices = kCentreSlices + kCentres;
constexpr int kEqualSlices = kMaterialSlices + 2;
constexpr int kStructureSlices = kEqualSlices + kPhases;

// What an ending's scale factor leaves of every other term.
bool TakesBack(TermId id) {
  switch (id) {
    case TermId::kExactResult:
    case TermId::kWrongBishop:
    case TermId::kHeldQueen:
    case TermId::kHeldRookEnding:
    case TermId::kOppositeBishops:
    case TermId::kOneWingEnding:
    case TermId::kTooLittleToWin:
    case TermId::kBlockedPosition:
    case TermId::kDeadPosition:
      return true;
    default:
      return false;
  }
}

// What scale factors leave of the other terms.
double KeptShare(const TermScores& scores) {
  int taken = 0;
  for (int i = 0; i < kTerms; ++i) {
    if (TakesBack(static_cast<TermId>(i))) taken += scores.cp[i];
  }
  const int before = scores.score_cp - taken;
  if (taken == 0 || before == 0) return 1;
  return static_cast<double>(scores.score_cp) / before;
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

// 0: middlegame, 1: between, 2: ending, a third of the scale each.
int PhaseOf(const Facts& facts) {
  constexpr int kMiddlegame = 171;
  constexpr int kBetween = 86;
  return facts.phase() >= kMiddlegame ? 0 : facts.phase() >= kBetween ? 1 : 2;
}
constexpr const char* kPhaseNames[kPhases] = {"middlegame", "between",
                                              "ending"};

}  // namespace

Tally::Tally(const Weights& weights, const std::vector<OwnTerm>& own)
    : weights_(weights), own_(own) {
  std::vector<Part> themes;
  for (int i = 0; i < kTerms; ++i) {
    const TermInfo& info = Info(static_cast<TermId>(i));
    const std::string theme(Name(info.theme));
    parts_.push_back({std::string(info.name), std::string(info.title),
                      std::string(info.definition), theme});
    if (std::none_of(themes.begin(), themes.end(),
                     [&](const Part& part) { return part.name == theme; })) {
      themes.push_back({theme, theme, "all terms of " + theme, theme});
    }
  }
  for (const OwnTerm& term : own_) {
    parts_.push_back({term.name, term.title, term.definition, ""});
  }
  terms_ = static_cast<int>(parts_.size());
  parts_.insert(parts_.end(), themes.begin(), themes.end());
  for (int i = 0; i < terms_; ++i) {
    const auto found = std::find_if(
        parts_.begin() + terms_, parts_.end(),
        [&](const Part& theme) { return theme.name == parts_[i].theme; });
    theme_of_.push_back(
        found == parts_.end() ? -1 : static_cast<int>(found - parts_.begin()));
  }
  const std::size_t all = parts_.size();
  changed_.resize(all * kChanges);
  fires_.resize(all);
  entries_.resize(all);
  size_.resize(all);
  sum_.resize(all);
  products_.resize(static_cast<std::size_t>(terms_) * terms_);
  game_loss_.resize(all);
  replicate_loss_.resize(all * kReplicates);

  for (const char* name : kPhaseNames) slices_.push_back({"phase", name, {}});
  for (int i = 0; i < kCentres; ++i) {
    slices_.push_back({"centre", Name(static_cast<Centre>(i)), {}});
  }
  slices_.push_back({"material", "equal", {}});
  slices_.push_back({"material", "unequal", {}});
  for (const char* name : kPhaseNames) {
    slices_.push_back({"equal material", name, {}});
  }
  for (int i = 0; i < kPawnStructures; ++i) {
    const char* const name = Name(static_cast<PawnStructure>(i));
    slices_.push_back(
        {"structure", *name == '\0' ? "none with a name" : name, {}});
  }
}

// Every part's share of the score as it is, scale factors spread over the other
// terms: left out, a term takes its part of what was taken back along.
Tally::Seen Tally::Look(const Facts& facts) {
  Seen seen;
  seen.cp.resize(parts_.size());
  seen.entries.resize(parts_.size());
  const TermScores scores = ScoreByTerm(facts, weights_);
  const double kept = KeptShare(scores);
  seen.score = scores.score_cp;
  const auto share = [](int cp, double kept_share) {
    return static_cast<int>(std::lround(cp * kept_share));
  };
  for (int i = 0; i < terms_; ++i) {
    if (i < kTerms) {
      seen.cp[i] = TakesBack(static_cast<TermId>(i))
                       ? scores.cp[i]
                       : share(scores.cp[i], kept);
      seen.entries[i] = scores.entries[i];
    } else {
      own_entries_.Restart(facts);
      own_[i - kTerms].find(facts, own_entries_);
      seen.cp[i] = share(own_entries_.score_cp(), std::clamp(kept, 0.0, 1.0));
      seen.entries[i] = static_cast<int>(own_entries_.found().size());
      seen.score += seen.cp[i];
    }
    if (theme_of_[i] >= 0) {
      seen.cp[theme_of_[i]] += seen.cp[i];
      seen.entries[theme_of_[i]] += seen.entries[i];
    }
  }
  return seen;
}

void Tally::AddToSlices(const Facts& facts, int score, double points) {
  const auto add = [&](int slice) { slices_[slice].scores.Add(score, points); };
  const int phase = PhaseOf(facts);
  add(phase);
  add(kCentreSlices + static_cast<int>(facts.centre()));
  const bool equal = SameMaterial(facts.position());
  add(kMaterialSlices + (equal ? 0 : 1));
  if (equal) add(kEqualSlices + phase);
  const StructureList structures = FindStructures(facts);
  add(kStructureSlices + static_cast<int>(structures.empty()
                                              ? PawnStructure::kNone
                                              : structures[0].structure));
}

void Tally::Add(const Sample& sample) {
  const Facts facts(sample.position);
  Seen seen = Look(facts);
  seen.points = sample.points;
  if (games_ == 0 || sample.game != game_) {
    game_ = sample.game;
    ++games_;
  }
  seen.game = games_;
  AddToSlices(facts, seen.score, sample.points);
  Count(seen);
  if (pilot_scale_ != 0) {
    CountGame(seen);
    return;
  }
  held_.push_back(std::move(seen));
  if (held_.size() < kHeldBack) return;
  pilot_scale_ = scores_.BestScale();
  for (const Seen& held : held_) CountGame(held);
  held_.clear();
  held_.shrink_to_fit();
}

void Tally::Count(const Seen& seen) {
  scores_.Add(seen.score, seen.points);
  std::vector<int> fired;
  for (int i = 0; i < static_cast<int>(parts_.size()); ++i) {
    const int cp = seen.cp[i];
    for (int change = 0; change < kChanges; ++change) {
      changed_[i * kChanges + change].Add(seen.score + ChangedBy(cp, change),
                                          seen.points);
    }
    if (seen.entries[i] == 0) continue;
    if (i < terms_) fired.push_back(i);
    entries_[i] += static_cast<std::uint64_t>(seen.entries[i]);
    ++fires_[i];
    size_[i] += std::abs(cp);
    sum_[i] += cp;
  }
  for (const int i : fired) {
    for (const int j : fired) {
      if (j > i) break;
      products_[i * terms_ + j] += static_cast<double>(seen.cp[i]) * seen.cp[j];
    }
  }
}

void Tally::CountGame(const Seen& seen) {
  if (!game_open_ || seen.game != open_game_) {
    CloseGame();
    open_game_ = seen.game;
    game_open_ = true;
  }
  const double as_is = LossOf(seen.score, seen.points, pilot_scale_);
  ++game_positions_;
  for (std::size_t i = 0; i < parts_.size(); ++i) {
    const int cp = seen.cp[i];
    if (cp == 0) continue;
    game_loss_[i] += LossOf(seen.score - cp, seen.points, pilot_scale_) - as_is;
  }
}

void Tally::CloseGame() {
  if (!game_open_) return;
  for (int r = 0; r < kReplicates; ++r) {
    const int draws = Draws(open_game_, r);
    if (draws == 0) continue;
    replicate_positions_[r] += draws * game_positions_;
    for (std::size_t i = 0; i < parts_.size(); ++i) {
      replicate_loss_[i * kReplicates + r] += draws * game_loss_[i];
    }
  }
  game_positions_ = 0;
  std::fill(game_loss_.begin(), game_loss_.end(), 0.0);
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

Tally::Worth Tally::WorthOf(int part) const {
  const double all = scores_.positions();
  const double as_is = scores_.Loss(scale_);
  Worth worth;
  worth.part = part;
  worth.fires = static_cast<double>(fires_[part]) / all;
  worth.entries = static_cast<double>(entries_[part]) / all;
  worth.size = size_[part] / static_cast<double>(fires_[part]);
  for (int change = 0; change < kChanges; ++change) {
    worth.loss[change] =
        changed_[part * kChanges + change].Loss(scale_) - as_is;
  }
  const double bend = worth.loss[kHalf] + worth.loss[kMore];
  if (bend > 0) {
    worth.best_factor =
        1 + (worth.loss[kHalf] - worth.loss[kMore]) / (4 * bend);
  }
  std::vector<double> losses;
  for (int r = 0; r < kReplicates; ++r) {
    if (replicate_positions_[r] > 0) {
      losses.push_back(replicate_loss_[part * kReplicates + r] /
                       replicate_positions_[r]);
    }
  }
  std::sort(losses.begin(), losses.end());
  if (!losses.empty()) {
    worth.low = losses[losses.size() * 25 / 1000];
    worth.high = losses[(losses.size() * 975 - 1) / 1000];
  }
  return worth;
}

void Tally::FindCompanions(Worth& worth) const {
  constexpr std::size_t kCompanions = 3;
  const double all = scores_.positions();
  const auto covariance = [&](int i, int j) {
    return products_[std::max(i, j) * terms_ + std::min(i, j)] / all -
           sum_[i] / all * (sum_[j] / all);
  };
  const int i = worth.part;
  for (int j = 0; j < terms_; ++j) {
    if (j == i || fires_[j] == 0) continue;
    const double spread = std::sqrt(covariance(i, i) * covariance(j, j));
    if (spread > 0) worth.companions.push_back({j, covariance(i, j) / spread});
  }
  std::sort(worth.companions.begin(), worth.companions.end(),
            [](const auto& a, const auto& b) {
              return std::abs(a.correlation) > std::abs(b.correlation);
            });
  if (worth.companions.size() > kCompanions) {
    worth.companions.resize(kCompanions);
  }
}

std::vector<Tally::Worth> Tally::Sorted(int first, int last) const {
  std::vector<Worth> found;
  for (int part = first; part < last; ++part) {
    if (fires_[part] > 0) found.push_back(WorthOf(part));
  }
  std::stable_sort(
      found.begin(), found.end(),
      [](const auto& a, const auto& b) { return a.loss[kOut] > b.loss[kOut]; });
  return found;
}

std::vector<Tally::Worth> Tally::Terms() const {
  std::vector<Worth> terms = Sorted(0, terms_);
  for (Worth& worth : terms) FindCompanions(worth);
  return terms;
}

std::vector<Tally::Worth> Tally::Themes() const {
  return Sorted(terms_, static_cast<int>(parts_.size()));
}

}  // namespace assay::bench
