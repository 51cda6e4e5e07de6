// Where one game of a file ends and the next begins.
//
// PgnScanner belongs to one thread. It cuts the tokens of a file into games by
// their looks alone, so that a game's faults never reach the next game:
//
// - A game begins with a tag pair, or with movetext where it has no tags.
// - It ends with a terminator (1-0, 0-1, 1/2-1/2, *), unless ")" follows in an
//   open variation; comments on the terminator's line belong to it.
// - It ends without one before a line of its movetext that begins with a tag
//   pair; where it has no movetext, before a tag pair that repeats the name of
//   its first after an empty line or an unclosed comment; and at the end of
//   the file.
// - Comments between two games belong to the second; after the last game, to
//   that. A file of comments alone has no game.
#ifndef ASSAY_NOTATION_PGN_SCANNER_H_
#define ASSAY_NOTATION_PGN_SCANNER_H_

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "assay/notation/pgn_lexer.h"

namespace assay {

class PgnScanner {
 public:
  explicit PgnScanner(PgnInput input);

  // Goes to the beginning of the next game; false at the end of the file.
  bool StartGame();
  // The next token of the game; false at its end. Never kEnd. A terminator in
  // a variation comes as kJunk.
  bool Next(PgnToken& token);

  const PgnLexer& lexer() const { return lexer_; }
  // Games started so far.
  std::uint64_t game() const { return game_; }

 private:
  enum class State : std::uint8_t { kEnded, kHeading, kTags, kMoves, kAfter };
  struct HeldComment {
    PgnToken token;
    std::string text;
  };

  PgnToken Take(PgnLexer::Context context);
  bool Hold(const PgnToken& token);
  bool NextHeld(PgnToken& token);
  bool NextInTags(PgnToken& token);
  bool NextInMoves(PgnToken& token);
  bool NextAfter(PgnToken& token);
  bool End(const PgnToken& next);

  PgnLexer lexer_;
  State state_ = State::kEnded;
  std::optional<PgnToken> ahead_;
  std::vector<HeldComment> held_;
  std::size_t held_given_ = 0;
  std::size_t held_bytes_ = 0;
  std::string first_tag_;
  std::string result_;
  bool broken_ = false;  // a comment among the tags is not closed
  std::size_t depth_ = 0;
  std::uint64_t game_ = 0;
};

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_SCANNER_H_
