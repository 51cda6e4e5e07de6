// What one player concedes again and again, over many games.
//
//   StudentStudy study;
//   for each game, in order: study.Add(StudyGame(game, item, name, assayer));
//   StudentReport report = study.Report();
//
// A move concedes a term where the ledger's entries of the term change for the
// worse, from the mover's view, by kLeastConcession or more. What is expected
// is what the opponents do in the same games: such positions, such clocks. A
// habit is what the student does more often than that by more than chance
// explains: each side's share lies outside the other's interval.
#ifndef ASSAY_LESSON_STUDENT_H_
#define ASSAY_LESSON_STUDENT_H_

#include <array>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/explain/catalogue.h"
#include "assay/lesson/handout_style.h"
#include "assay/notation/pgn_reader.h"

namespace assay {

inline constexpr Centipawns kLeastConcession = 15;
// A habit has been seen so often at least.
inline constexpr std::size_t kLeastHabit = 3;

// The share that a count of chances estimates: Wilson's interval of 95 %
// (E. B. Wilson, Journal of the American Statistical Association, 1927).
struct ShareInterval {
  double low = 0;
  double high = 1;
};
ShareInterval WilsonInterval(std::size_t count, std::size_t chances);

// One place where a habit shows.
struct HabitPlace {
  std::uint32_t game = 0;  // from 0
  int ply = 0;
  std::string where;  // "game 3, after 14... Re8: Mila Cordes - Yusuf Dorn"
  std::string text;   // what was conceded or ignored
  Position position;  // after the move conceded; before the plan began
  Centipawns cost_cp = 0;

  HabitPlace() : position(Position::Initial()) {}
};

// How often, out of how many.
struct HabitCount {
  std::size_t count = 0;
  std::size_t chances = 0;

  double share() const {
    return chances == 0
               ? 0
               : static_cast<double>(count) / static_cast<double>(chances);
  }
};

struct Habit {
  std::string name;        // for a reader
  std::string id;          // a term's or a kind of plan's: "siege"
  HabitCount own;          // of the student
  HabitCount others;       // of the opponents
  ShareInterval interval;  // of the student's share
  std::map<std::string, std::size_t> structures;  // where, by name
  std::vector<HabitPlace> clearest;               // at most three
};

struct StudentReport {
  std::size_t games = 0;
  std::size_t moves = 0;           // of the student, looked at
  std::vector<Habit> concessions;  // strongest first
  std::vector<Habit> ignored;      // plans of the opponent
};

// Of a term or a kind of plan in one game: counts and the costliest places.
struct HabitTally {
  std::size_t own = 0;
  std::size_t own_chances = 0;  // of plans; terms have all moves
  std::size_t others = 0;
  std::size_t others_chances = 0;
  std::map<std::string, std::size_t> structures;
  std::vector<HabitPlace> places;
};

struct GameStudy {
  bool found = false;               // the student played in it
  std::size_t moves[2] = {0, 0};    // looked at: of the student, the opponent
  std::map<int, HabitTally> terms;  // by TermId
  std::map<int, HabitTally> plans;  // by PlanKind
};

// Whether a White or Black tag names the player: the same words in any case,
// whole or up to the comma.
bool NamesPlayer(std::string_view tag, std::string_view name);

// Safe to call from several threads. Places are told in the given words, and so
// is what follows.
GameStudy StudyGame(std::uint32_t game, const PgnItem& item,
                    std::string_view name, const Assayer& assayer,
                    const Catalogue& words = Catalogue::English());

class StudentStudy {
 public:
  void Add(const GameStudy& study);
  StudentReport Report(const Catalogue& words = Catalogue::English()) const;

 private:
  std::size_t games_ = 0;
  std::size_t moves_[2] = {0, 0};
  std::map<int, HabitTally> terms_;
  std::map<int, HabitTally> plans_;
};

// The report in plain words for a terminal or a file.
std::string ToText(const StudentReport& report, const std::string& name,
                   const Catalogue& words = Catalogue::English());

// The report as a sheet: one HTML file without any other.
std::string StudentHandout(const StudentReport& report, const std::string& name,
                           const Catalogue& words = Catalogue::English(),
                           Paper paper = Paper::kAny);

}  // namespace assay

#endif  // ASSAY_LESSON_STUDENT_H_
