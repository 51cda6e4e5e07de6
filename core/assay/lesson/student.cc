#include "assay/lesson/student.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <utility>

#include "assay/explain/catalogue.h"
#include "assay/explain/line_text.h"
#include "assay/explain/structure_notes.h"
#include "assay/explain/term_title.h"
#include "assay/explain/text.h"
#include "assay/explain/words.h"
#include "assay/lesson/place.h"
#include "assay/terms/ledger.h"

namespace assay {
namespace {

// Before this ply, what is conceded is the opening's doing.
constexpr int kFirstPly = 12;
// A plan is worth minding from here on.
constexpr Centipawns kWorthMinding = 30;
// Moves of its own that a side may put between the steps of its plan.
constexpr std::size_t kDelays = 2;
constexpr std::size_t kClearest = 3;

// By PlanKind.
constexpr std::string_view kKindsOfPlan[kPlanKinds] = {
    "plan_kind.siege",     "plan_kind.lever",   "plan_kind.expansion",
    "plan_kind.regroup",   "plan_kind.trade",   "plan_kind.minority_attack",
    "plan_kind.majority",  "plan_kind.passer",  "plan_kind.king_attack",
    "plan_kind.king_walk", "plan_kind.develop", "plan_kind.file",
    "plan_kind.restrain",  "plan_kind.reshape"};

// What a position comes to term by term, White's view.
struct ByTerm {
  std::array<int, kTerms> value_cp{};
  Message structure;
};

ByTerm Evaluate(const Position& position, const Assayer& assayer,
                Ledger& ledger) {
  const Facts facts(position);
  ledger.Clear();
  MakeLedger(facts, assayer.weights(), ledger);
  ByTerm by_term;
  for (const Entry& entry : ledger.entries) {
    by_term.value_cp[Index(entry.term)] += entry.value_cp;
  }
  by_term.structure = StructureOrCentre(facts);
  return by_term;
}

// The move itself is no feature; material changes by captures alone.
bool IsHabitTerm(TermId term) {
  return term != TermId::kTempo && term != TermId::kMaterial &&
         Info(term).theme != Theme::kMaterial &&
         Info(term).theme != Theme::kEndings;
}

// One game as it was played.
struct Play {
  std::vector<NodeIndex> nodes;
  std::vector<Move> moves;
  std::vector<Position> positions;  // one more than moves
};

Play PlayOf(const GameTree& tree) {
  Play play;
  play.positions.push_back(tree.start);
  for (const NodeIndex node : tree.MainLine()) {
    const Move move = tree.nodes[node].move;
    if (move.is_null()) break;
    play.nodes.push_back(node);
    play.moves.push_back(move);
    play.positions.push_back(play.positions.back().After(move));
  }
  return play;
}

// Whether the side made the plan's moves, in order, from the ply on.
bool CarriedOut(const Play& play, std::size_t ply, const Plan& plan) {
  std::size_t step = 0;
  std::size_t own = 0;
  for (std::size_t i = ply; i < play.moves.size(); ++i) {
    if (play.positions[i].side_to_move() != plan.side) continue;
    if (++own > plan.moves.size() + kDelays) return false;
    if (play.moves[i] == plan.moves[step] && ++step == plan.moves.size()) {
      return true;
    }
  }
  return false;
}

class Student {
 public:
  Student(std::uint32_t game, const PgnItem& item, Side side,
          const Assayer& assayer, const Catalogue& words)
      : game_(game),
        tree_(item.tree),
        side_(side),
        assayer_(assayer),
        words_(words),
        play_(PlayOf(item.tree)) {}

  GameStudy Study() {
    study_.found = true;
    Ledger ledger;
    for (std::size_t i = kFirstPly; i < play_.moves.size(); ++i) {
      LookAtMove(i, ledger);
      LookAtPlans(i);
    }
    return std::move(study_);
  }

 private:
  void LookAtMove(std::size_t i, Ledger& ledger) {
    const Position& before = play_.positions[i];
    const Position& after = play_.positions[i + 1];
    const Side mover = before.side_to_move();
    ++study_.moves[mover == side_ ? 0 : 1];
    // Half of an exchange is no concession, nor what a check forces.
    const bool captures = !before.At(play_.moves[i].to()).empty();
    if (captures || before.InCheck() || after.InCheck()) return;
    const ByTerm was = Evaluate(before, assayer_, ledger);
    const ByTerm is = Evaluate(after, assayer_, ledger);
    for (int term = 0; term < kTerms; ++term) {
      const int change = Sign(mover) * (is.value_cp[term] - was.value_cp[term]);
      const auto id = static_cast<TermId>(term);
      if (change > -kLeastConcession || !IsHabitTerm(id)) continue;
      HabitTally& tally = study_.terms[term];
      if (mover != side_) {
        ++tally.others;
        continue;
      }
      ++tally.own;
      ++tally.structures[words_.Text(is.structure)];
      HabitPlace place = Place(i);
      place.cost_cp = -change;
      place.position = after;
      place.text = words_.Text(
          Sentence(Say("student.costs", NumberedMove(before, play_.moves[i]),
                       PawnsText(-change).substr(1))));
      Keep(std::move(place), tally.places);
    }
  }

  // The waiting side's best plan, once for as long as it stays the best.
  void LookAtPlans(std::size_t i) {
    const Position& before = play_.positions[i];
    if (before.InCheck()) return;
    const Side mover = before.side_to_move();
    const Facts facts(before);
    const Plans plans = FindPlans(facts, assayer_.weights(), 1);
    const std::vector<Plan>& theirs = plans.Of(Other(mover));
    if (theirs.empty()) return;
    const Plan& plan = theirs.front();
    if (plan.standing != Standing::kInTime || plan.gain < kWorthMinding) return;
    std::optional<Plan>& last = last_[Index(mover)];
    const bool known = last.has_value() && last->kind == plan.kind &&
                       last->targets == plan.targets;
    last = plan;
    if (known) return;
    HabitTally& tally = study_.plans[static_cast<int>(plan.kind)];
    const bool answered =
        !plan.counter.empty() && plan.counter.front() == play_.moves[i];
    const bool ignored = !answered && CarriedOut(play_, i + 1, plan);
    if (mover != side_) {
      ++tally.others_chances;
      tally.others += ignored ? 1 : 0;
      return;
    }
    ++tally.own_chances;
    if (!ignored) return;
    ++tally.own;
    ++tally.structures[words_.Text(StructureOrCentre(facts))];
    HabitPlace place = Place(i);
    place.cost_cp = plan.gain;
    place.position = before;
    ClaimTable table;
    place.text = words_.Text(
        List("list.sentences",
             {TellPlan(facts, plan, assayer_.weights(), table).said,
              Sentence(Say("student.let_happen",
                           NumberedMove(before, play_.moves[i])))}));
    Keep(std::move(place), tally.places);
  }

  HabitPlace Place(std::size_t i) const {
    HabitPlace place;
    place.game = game_;
    place.ply = static_cast<int>(i);
    place.where = PlaceText(game_, tree_, play_.nodes[i], words_);
    const std::string title = GameTitle(tree_);
    if (!title.empty()) place.where += " (" + title + ")";
    return place;
  }

  // One place of a game is enough to show: the costliest.
  static void Keep(HabitPlace place, std::vector<HabitPlace>& places) {
    if (places.empty()) {
      places.push_back(std::move(place));
    } else if (place.cost_cp > places.front().cost_cp) {
      places.front() = std::move(place);
    }
  }

  const std::uint32_t game_;
  const GameTree& tree_;
  const Side side_;
  const Assayer& assayer_;
  const Catalogue& words_;
  const Play play_;
  std::optional<Plan> last_[2];
  GameStudy study_;
};

std::string PlainName(std::string_view name) {
  std::string plain;
  for (const char c : name) {
    if (c == '.' || IsPgnSpace(c)) {
      if (!plain.empty() && plain.back() != ' ') plain += ' ';
    } else {
      plain += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
  }
  while (!plain.empty() && plain.back() == ' ') plain.pop_back();
  return plain;
}

void AddTally(const HabitTally& from, HabitTally& to) {
  to.own += from.own;
  to.own_chances += from.own_chances;
  to.others += from.others;
  to.others_chances += from.others_chances;
  for (const auto& structure : from.structures) {
    to.structures[structure.first] += structure.second;
  }
  to.places.insert(to.places.end(), from.places.begin(), from.places.end());
  std::stable_sort(to.places.begin(), to.places.end(),
                   [](const HabitPlace& a, const HabitPlace& b) {
                     return a.cost_cp > b.cost_cp;
                   });
  if (to.places.size() > kClearest) to.places.resize(kClearest);
}

// None where chance explains it.
std::optional<Habit> MakeHabit(const HabitTally& tally, HabitCount own,
                               HabitCount others) {
  Habit habit;
  habit.own = own;
  habit.others = others;
  habit.interval = WilsonInterval(own.count, own.chances);
  habit.structures = tally.structures;
  habit.clearest = tally.places;
  const ShareInterval theirs = WilsonInterval(others.count, others.chances);
  if (own.count < kLeastHabit || habit.interval.low <= others.share() ||
      own.share() <= theirs.high) {
    return std::nullopt;
  }
  return habit;
}

void SortHabits(std::vector<Habit>& habits) {
  std::stable_sort(habits.begin(), habits.end(),
                   [](const Habit& a, const Habit& b) {
                     return a.interval.low - a.others.share() >
                            b.interval.low - b.others.share();
                   });
}

}  // namespace

ShareInterval WilsonInterval(std::size_t count, std::size_t chances) {
  if (chances == 0) return {};
  const double z = 1.959964;
  const auto n = static_cast<double>(chances);
  const double p = static_cast<double>(count) / n;
  const double middle = (p + z * z / (2 * n)) / (1 + z * z / n);
  const double half =
      z / (1 + z * z / n) * std::sqrt(p * (1 - p) / n + z * z / (4 * n * n));
  return {std::max(0.0, middle - half), std::min(1.0, middle + half)};
}

bool NamesPlayer(std::string_view tag, std::string_view name) {
  const std::string plain = PlainName(tag);
  const std::string wanted = PlainName(name);
  if (wanted.empty() || wanted == "?") return false;
  return plain == wanted || plain.substr(0, plain.find(',')) == wanted;
}

GameStudy StudyGame(std::uint32_t game, const PgnItem& item,
                    std::string_view name, const Assayer& assayer,
                    const Catalogue& words) {
  for (const Side side : kSides) {
    const std::string* tag = item.tree.Tag(Name(side));
    if (tag == nullptr || !NamesPlayer(*tag, name)) continue;
    return Student(game, item, side, assayer, words).Study();
  }
  return {};
}

void StudentStudy::Add(const GameStudy& study) {
  if (!study.found) return;
  ++games_;
  moves_[0] += study.moves[0];
  moves_[1] += study.moves[1];
  for (const auto& term : study.terms)
    AddTally(term.second, terms_[term.first]);
  for (const auto& plan : study.plans)
    AddTally(plan.second, plans_[plan.first]);
}

StudentReport StudentStudy::Report(const Catalogue& words) const {
  StudentReport report;
  report.games = games_;
  report.moves = moves_[0];
  for (const auto& term : terms_) {
    const HabitTally& tally = term.second;
    std::optional<Habit> habit =
        MakeHabit(tally, {tally.own, moves_[0]}, {tally.others, moves_[1]});
    if (!habit.has_value()) continue;
    const TermInfo& info = Info(static_cast<TermId>(term.first));
    habit->id = std::string(info.name);
    habit->name = Capitalised(TermTitle(info, words));
    report.concessions.push_back(*std::move(habit));
  }
  for (const auto& plan : plans_) {
    const HabitTally& tally = plan.second;
    std::optional<Habit> habit =
        MakeHabit(tally, {tally.own, tally.own_chances},
                  {tally.others, tally.others_chances});
    if (!habit.has_value()) continue;
    habit->id = Name(static_cast<PlanKind>(plan.first));
    habit->name = Capitalised(
        words.Text(Say(kKindsOfPlan[static_cast<std::size_t>(plan.first)])));
    report.ignored.push_back(*std::move(habit));
  }
  SortHabits(report.concessions);
  SortHabits(report.ignored);
  return report;
}

}  // namespace assay
