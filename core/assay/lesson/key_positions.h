// The key positions of a lesson: which are worth explaining, and why.
//
//   const Lesson lesson(text, selection, assayer);
//   LessonReader reader(lesson);
//   while (std::optional<LessonGame> game = reader.Next()) {
//     for (const KeyPosition& key : game->keys) ...
//   }
//
// A position that the lesson comes to more than once, by whatever order of
// moves, is one key position; the other places are named beside it. Of a whole
// lesson only a few words a key position are kept; games are read one by one.
// A Lesson never changes after construction and is safe to share.
#ifndef ASSAY_LESSON_KEY_POSITIONS_H_
#define ASSAY_LESSON_KEY_POSITIONS_H_

#include <atomic>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/explain/catalogue.h"
#include "assay/notation/pgn_reader.h"

namespace assay {

// Which positions are key positions: those that any set field selects.
struct LessonSelection {
  bool comments = false;          // the author commented there
  bool assessments = false;       // the author gave a NAG from 10 to 21
  bool line_ends = false;         // the last of each line
  bool turning_points = false;    // the count, the centre or a plan changes
  std::uint32_t every_plies = 0;  // of the main line; 0: none

  bool nothing() const {
    return !comments && !assessments && !line_ends && !turning_points &&
           every_plies == 0;
  }
};

// How far beyond the first place others are named for a reader.
inline constexpr std::size_t kMostOtherPlaces = 12;

struct KeyPosition {
  std::uint32_t game = 0;  // from 0
  NodeIndex node = 0;
  std::size_t index = 0;                // among all of the lesson's, from 0
  std::optional<std::size_t> previous;  // the nearest one before, on its line
  Position position;
  std::vector<std::string> path;  // SAN from the game's start
  std::string because;            // "the author commented here"
  std::vector<std::string> also_reached;
  // Set where the position was explained before: the place. Such a one has no
  // index, and nothing was reached again.
  std::string explained_at;

  explicit KeyPosition(const Position& at) : position(at) {}
};

struct LessonGame {
  std::uint32_t game = 0;  // from 0
  PgnItem item;
  std::vector<KeyPosition> keys;  // in the order of the text
};

class Lesson {
 public:
  // The text without our own comments is kept. Where the selection has nothing
  // set: comments, assessments and ends of lines, and turning points in games
  // that have neither of the first two. Where `cancelled` turns true, the
  // choice ends soon, and the lesson is of no use. Reasons and places are told
  // in the given words.
  Lesson(std::string_view pgn, const LessonSelection& selection,
         const Assayer& assayer, const std::atomic<bool>* cancelled = nullptr,
         const Catalogue& words = Catalogue::English());

  const std::string& text() const { return text_; }
  // Key positions to explain.
  std::size_t size() const { return size_; }
  std::uint32_t games() const { return games_; }

 private:
  friend class LessonReader;
  struct Entry {
    std::uint32_t game = 0;
    NodeIndex node = 0;
    std::uint32_t first = 0;   // index of the entry that explains the position
    std::uint32_t number = 0;  // among those to explain
    std::uint8_t reasons = 0;
  };

  void Choose(const LessonSelection& selection, const Assayer& assayer);
  void FindOtherPlaces();
  bool Cancelled() const { return cancelled_ != nullptr && *cancelled_; }

  std::string text_;
  std::vector<Entry> entries_;
  std::map<std::uint32_t, std::string> turns_;   // by entry, in words
  std::map<std::uint32_t, std::string> places_;  // of entries met again
  std::map<std::uint32_t, std::vector<std::string>> others_;
  std::size_t size_ = 0;
  std::uint32_t games_ = 0;
  std::uint32_t every_ = 0;
  const std::atomic<bool>* cancelled_;
  const Catalogue& words_;
};

// Reads a lesson's games with their key positions; for one thread.
class LessonReader {
 public:
  // The lesson outlives the reader.
  explicit LessonReader(const Lesson& lesson);

  std::optional<LessonGame> Next();

 private:
  KeyPosition Make(const LessonGame& game, const Lesson::Entry& entry,
                   const Position& position) const;

  const Lesson& lesson_;
  PgnReader reader_;
  std::uint32_t game_ = 0;
  std::size_t next_ = 0;  // entry
};

}  // namespace assay

#endif  // ASSAY_LESSON_KEY_POSITIONS_H_
