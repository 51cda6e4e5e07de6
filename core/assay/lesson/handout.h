// The sheet that students are given: one HTML file without any other, that
// prints well on A4 and Letter.
//
// It is written in parts, since a lesson may have more positions than fit in
// memory with their drawings: HandoutOpening, the contents, a section for
// each position, HandoutExercises, ..., HandoutClosing.
#ifndef ASSAY_LESSON_HANDOUT_H_
#define ASSAY_LESSON_HANDOUT_H_

#include <string>
#include <vector>

#include "assay/explain/catalogue.h"
#include "assay/explain/explanation.h"
#include "assay/lesson/handout_style.h"
#include "assay/lesson/key_positions.h"

namespace assay {

// All that a handout says of one key position. Every part is HTML but the
// first two.
struct HandoutParts {
  std::string place;    // "after 14... Re8"
  std::string verdict;  // "White is slightly better."
  std::string section;  // up to the steps of the verdict
  std::string section_end;
  std::string exercise;  // empty where there is nothing to ask
  std::string answer;
};

// Of one position: what it is called, what its author says of it.
struct HandoutEntry {
  const KeyPosition& key;
  const GameTree& tree;
  const Explanation& explanation;
  const Catalogue& words = Catalogue::English();  // around the texts
};

HandoutParts MakeHandoutParts(const HandoutEntry& entry);

struct HandoutTitle {
  std::string title;   // of the lesson
  std::string origin;  // "winter.pgn, 3 games, 14 positions"
  Paper paper = Paper::kAny;
};

// Of these, too, the words are those around the texts.
std::string HandoutOpening(const HandoutTitle& title,
                           const Catalogue& words = Catalogue::English());
// A line of the table of contents. `game` is the title of a game that begins
// here, else empty.
std::string HandoutContentsLine(std::size_t index, const HandoutParts& parts,
                                const std::string& game);
std::string HandoutContentsEnd(const Catalogue& words = Catalogue::English());
// The verdicts on the way to a position, as sentences: place and verdict each.
struct VerdictStepText {
  std::string place;
  std::string verdict;
};
std::string HandoutVerdictSteps(const std::vector<VerdictStepText>& steps,
                                const Catalogue& words = Catalogue::English());
std::string HandoutExercisesOpening(
    const Catalogue& words = Catalogue::English());
std::string HandoutAnswersOpening(
    const Catalogue& words = Catalogue::English());
std::string HandoutClosing(const Catalogue& words = Catalogue::English());

}  // namespace assay

#endif  // ASSAY_LESSON_HANDOUT_H_
