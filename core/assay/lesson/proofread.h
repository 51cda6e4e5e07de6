// What in a lesson does not hold up.
//
//   for (const ProofreadTask& task : ProofreadTasks(game, item)) {
//     Checked checked = Proofread(task, item, settings);   // any thread
//     clashes.Add(checked, findings);                      // in order
//   }
//
// A finding is what the author says, what was found instead, and the proof. A
// doubtful one is not made: what a first look finds is looked at again with
// more nodes, and has to be still there.
//
// Kinds:
//   illegal_move, ambiguous_move, unreadable   the text itself
//   assessment     a NAG from 10 to 21 that is off the proved verdict
//   hanging_end    a line that stops where something falls
//   good_move      a move marked good ($1, $3) that loses to a reply
//   missing_reply  the strongest reply is not among those given
//   transposition  one position with two verdicts
//   structure      two nearly identical positions whose verdicts clash
//   own_comment    a sentence of ours that no longer holds
#ifndef ASSAY_LESSON_PROOFREAD_H_
#define ASSAY_LESSON_PROOFREAD_H_

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/explain/catalogue.h"
#include "assay/notation/pgn_reader.h"

namespace assay {

struct Finding {
  std::uint32_t game = 0;  // from 0
  std::vector<std::string> path;
  std::string place;  // "game 2, after 14... Re8"
  std::string kind;   // for programs
  std::string title;  // the same in words
  std::string author_says;
  std::string found;
  Position position;  // that the proof starts from
  std::optional<Proof> proof;

  Finding() : position(Position::Initial()) {}
};

struct ProofreadSettings {
  const Assayer& assayer;
  // Of a first look; a second has kSecondLook times as many. 0: the default.
  std::uint64_t nodes = 0;
  const std::atomic<bool>* cancelled = nullptr;
  // Without search, only the text itself is checked, and one position with two
  // verdicts.
  bool search = true;
  // What is found is told in these.
  const Catalogue& words = Catalogue::English();
};
inline constexpr std::uint64_t kSecondLook = 4;

// One node of a game and what is to be asked of it; kNoNode: the game's faults.
struct ProofreadTask {
  NodeIndex node = 0;
  bool assessment = false;
  bool line_end = false;
  bool marked_good = false;
  bool replies = false;
  bool own_comment = false;
};

// What there is to check in a game, in the order of its text.
std::vector<ProofreadTask> ProofreadTasks(const PgnItem& item);

// An assessment of the author's, for comparison with others.
struct AssessedPlace {
  std::uint64_t hash = 0;
  // The same for nearly identical positions: the same side to move, the same
  // pawns on the same squares, as many pieces of each kind for each side, or
  // all this with the colours swapped. Where the pieces and kings stand, and
  // who may castle, does not count.
  std::uint64_t structure = 0;
  Side to_move = Side::kWhite;
  int nag = 0;
  Centipawns proved_cp = 0;
  bool off = false;  // by itself already
  Finding finding;   // with game, path and place set
};

struct Checked {
  std::vector<Finding> findings;
  std::optional<AssessedPlace> assessed;
};

// `game` counts from 0. Safe to call from several threads.
Checked Proofread(const ProofreadTask& task, std::uint32_t game,
                  const PgnItem& item, const ProofreadSettings& settings);

// Which step of advantage a NAG from 10 to 21 stands for: 0 equal, 3 winning
// (decisive and crushing are one: authors use them as one), negative for
// Black.
int AssessmentStep(int nag);
// How far a score is from what the NAG says; 0 where it agrees.
Centipawns DistanceFrom(int nag, Centipawns score_cp);

// Verdicts of nearly identical positions clash where they are so many steps of
// AssessmentStep apart, from the view of the side to move,
inline constexpr int kClashingSteps = 2;
// while the proved scores, from the same view, are so near to each other.
inline constexpr Centipawns kNearlySame = 60;

// Compares assessments across a whole lesson; for one thread. An assessment
// that is off by itself is compared with those of the very same position alone.
class ClashFinder {
 public:
  // Adds what clashes with an earlier place to the findings.
  void Add(Checked& checked, const Catalogue& words = Catalogue::English());

 private:
  struct Known {
    int nag = 0;
    Centipawns proved_cp = 0;
    Side to_move = Side::kWhite;
    std::string place;

    int Step() const { return Sign(to_move) * AssessmentStep(nag); }
    Centipawns Proved() const { return Sign(to_move) * proved_cp; }
  };
  std::map<std::uint64_t, Known> positions_;
  std::map<std::uint64_t, std::vector<Known>> structures_;
};

}  // namespace assay

#endif  // ASSAY_LESSON_PROOFREAD_H_
