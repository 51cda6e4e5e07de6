// Games out of PGN text or files of any size, one at a time, with every move
// played.
//
//   PgnReader reader(text);  // or a PgnSource that reads a file
//   while (std::optional<PgnItem> item = reader.Next()) {
//     if (item->ok()) {
//       Use(item->tree);
//     } else {
//       Report(item->status());  // "game 3, line 12, column 5: move: illegal
//     }                          //  move: found "Nf6", expected ..."
//   }
//
// A PgnReader belongs to one thread. Next() never fails: each game of the file
// is one item, with what is wrong with it. A game with faults ends neither the
// reading nor the game before or after it (pgn_scanner.h says where games
// end), and the item's tree has what was read before the fault: all tags, and
// the moves, comments and NAGs up to the first fault of the movetext.
//
// Faults (fields and reasons; limits in pgn_limits.h):
//   tag        "no name", "name too long", "no value", "value too long",
//              "value not closed", "not closed", "too many"
//   comment    "not closed", "too long", "too many", "too many bytes"
//   move       "not a move", "illegal move", "ambiguous move" (san.h), "pass
//              in check", "too many"
//   variation  "no move to replace", "not opened", "not closed", "nested too
//              deep"
//   nag        "no number", "over 255", "too many"
//   mark       "not a suffix mark"
//   movetext   "unexpected text", "terminator in a variation"
//   variant    "not supported": the Variant tag names other rules
//   setup      "no FEN": SetUp is 1, and there is no FEN tag
//   FEN tag    the fields and reasons of fen.h, e.g. "placement"
//   encoding   "UTF-16"
// Remarks, which lose nothing (GameTree::remarks, same form of fields):
//   result     "no terminator" (the result is the Result tag's, if it has
//              one), "tag differs", "tag is no result", "draw cut short" (1/2)
//   tag        "given twice"
//   number     "does not fit": the first wrong move number
//   setup      "FEN without SetUp", "FEN with SetUp 0": the FEN counts
//
// More than the standard asks for is read: moves as san.h does, "--" and "Z0"
// as a pass, a mark apart from its move, signs such as "+/-" (pgn_marks.h).
#ifndef ASSAY_NOTATION_PGN_READER_H_
#define ASSAY_NOTATION_PGN_READER_H_

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "absl/status/status.h"
#include "assay/base/problem.h"
#include "assay/notation/pgn_scanner.h"
#include "assay/notation/pgn_tree.h"

namespace assay {

struct PgnFault {
  PgnPlace place;
  Problem problem;
  NodeIndex node = 0;  // the last that was read of its line
};

// "game 3, line 12, column 5".
std::string ToString(const PgnPlace& place);

// Where the text of a node ends, in bytes from the beginning of the file: what
// is to be written beside it goes there. Of the main line's start without a
// comment, where the movetext begins.
struct PgnExtent {
  // The end of its move and the NAGs and marks beside it; of the "(" of a
  // variation's start.
  std::uint64_t marks = 0;
  // The same with the comments that come before its variations.
  std::uint64_t comments = 0;
  // Where the closing brace of the last of these comments stands; 0 where
  // there is none in braces.
  std::uint64_t brace = 0;
};

// One game of a file.
struct PgnItem {
  GameTree tree;
  PgnPlace place;  // of its first tag, move or comment
  std::vector<PgnFault> faults;
  std::vector<PgnExtent> extents;  // one for each node of the tree

  bool ok() const { return faults.empty(); }
  // INVALID_ARGUMENT with a Problem for each fault, the place put before its
  // field; OK without faults.
  absl::Status status() const;
};

class PgnReader {
 public:
  explicit PgnReader(PgnSource source);
  // The text outlives the reader.
  explicit PgnReader(std::string_view text);

  // The next game; nothing at the end of the file.
  std::optional<PgnItem> Next();

 private:
  PgnScanner scanner_;
  bool ended_ = false;  // the file is none that can be read
};

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_READER_H_
