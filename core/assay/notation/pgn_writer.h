// Game trees as PGN text.
//
//   absl::StatusOr<std::string> text = WritePgn(tree, PgnLayout::kExport);
//
// Two layouts:
//
// kExport is the export format of the PGN standard of 1994 (3.2, 8.1, 8.2): the
// same game always gives the same bytes. The seven tags of the roster come
// first, in order, with "?" for what is not known, then the others in ASCII
// order (from memory), each name once; SetUp and FEN where the game starts from
// another position; Result is the terminator. Lines have less than 80
// characters, each as full as it can be. White's moves are numbered "12.",
// Black's "12..." at a line's beginning and after a comment or a variation.
// Suffix marks are NAGs. The standard leaves comments in export format open;
// ours are filled into lines like moves, so that white space in them may turn
// into a line end or one space, and a ";" comment becomes a brace comment
// unless it has a "}" in it. Only a word of 80 characters, such a ";" comment
// and a tag pair make longer lines.
//
// kAuthor keeps every byte of every tag and comment, the order of the tags and
// each comment's kind: what PgnReader reads from it is the same tree. Moves are
// laid out as in kExport around them. Of a tree without tags, the heading reads
// back as comments of the main line's start. Where a ";" comment comes before
// another comment in `closing`, the latter reads back as the next game's.
#ifndef ASSAY_NOTATION_PGN_WRITER_H_
#define ASSAY_NOTATION_PGN_WRITER_H_

#include <cstdint>
#include <string>
#include <string_view>

#include "absl/status/statusor.h"
#include "assay/notation/pgn_tree.h"

namespace assay {

enum class PgnLayout : std::uint8_t { kExport, kAuthor };

// One game with an empty line at its end: texts of games put one after another
// are a file. INVALID_ARGUMENT with Problems where the tree has what PGN cannot
// say or a reader would refuse (pgn_limits.h):
//   tag        "bad name", "line end in value", "value too long", "too many"
//   comment    "right brace" in a brace comment, "line end" in a ";" comment,
//              "too long"
//   nag        "too many"
//   variation  "nested too deep"
//   move       "too many"
absl::StatusOr<std::string> WritePgn(const GameTree& tree, PgnLayout layout);

// A brace comment of any text: braces in it become parentheses.
PgnComment MakeComment(std::string_view text);

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_WRITER_H_
