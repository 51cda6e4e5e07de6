// Tags and move texts of games, without a board: to find games in large files
// several times faster than PgnReader plays them.
//
//   PgnSkimmer skimmer(source);
//   SkimmedGame game;
//   while (skimmer.Next(game)) { ... }
//
// A PgnSkimmer belongs to one thread. It sees exactly the games that PgnReader
// sees, in the same places (pgn_scanner.h), and finds no fault with any:
// faulty tags and comments are passed over.
#ifndef ASSAY_NOTATION_PGN_SKIMMER_H_
#define ASSAY_NOTATION_PGN_SKIMMER_H_

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "assay/notation/pgn_scanner.h"
#include "assay/notation/pgn_tree.h"

namespace assay {

struct SkimmedGame {
  std::vector<PgnTag> tags;  // the first kMostPgnTags
  // The main line's moves as written, each with one space before it; the
  // first kMostPgnNodes.
  std::string moves;
  GameResult result = GameResult::kUnknown;  // of the terminator
  bool terminated = false;
  std::size_t move_count = 0;  // of the main line
  std::size_t variation_count = 0;
  std::size_t comment_count = 0;
  std::size_t nag_count = 0;  // suffix marks among them
  PgnPlace place;             // of its first token
  std::uint64_t offset = 0;   // bytes before it in the file

  const std::string* Tag(std::string_view name) const;
};

class PgnSkimmer {
 public:
  explicit PgnSkimmer(PgnSource source);
  // The text outlives the skimmer.
  explicit PgnSkimmer(std::string_view text);

  // The next game, in the place of what `game` was (its memory is used again);
  // false at the end of the file.
  bool Next(SkimmedGame& game);

 private:
  PgnScanner scanner_;
};

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_SKIMMER_H_
