// Our words in a PGN, told from the author's.
//
// Ours begin with a mark, "[%assay]", and say beside it which NAG we added.
// They stand at the end of the author's comment where there is one, since some
// readers take one comment a move alone; else in a comment of their own:
//
//   14. Nd5 $16 {The knight stands well.
//   [%assay $16] White is clearly better, ...} Be6 $14
//   {[%assay $14] White is slightly better, ...}
//
// So they can be taken out again to the byte, and a second run over our own
// output starts from the author's text and ends in the same bytes.
#ifndef ASSAY_LESSON_OWN_COMMENTS_H_
#define ASSAY_LESSON_OWN_COMMENTS_H_

#include <string>
#include <string_view>
#include <vector>

#include "assay/notation/pgn_reader.h"

namespace assay {

// Where our words begin in a comment's text, the line end before their mark
// included; npos where there are none.
std::size_t OursBegin(std::string_view text);
// What we say in a comment, without the mark, its lines joined.
std::string OurWords(std::string_view text);
// The NAG that we added beside a comment; 0 for none.
int OurNag(std::string_view text);
// What the author says in a comment, commands such as [%clk ...] left out,
// white space as single blanks.
std::string AuthorWords(std::string_view text);
// All that the author says of a node, in UTF-8.
std::string AuthorWords(const GameTree& tree, const GameNode& node);

// The text without our comments and NAGs: as the author left it.
std::string WithoutOurs(std::string_view pgn);

// Something to write into a text at an offset.
struct Insertion {
  std::uint64_t offset = 0;
  std::string text;
};

// Our words at a node of a game that was read from a text: in order, the NAG
// (none for 0, where the author gave an assessment, or at a line's start) and
// the comment. Lines end as `line_end` does.
std::vector<Insertion> InsertionsAt(const PgnItem& item, NodeIndex node,
                                    int nag, std::string_view words,
                                    std::string_view line_end);

// "\r\n" where the text's first line ends so, else "\n".
std::string_view LineEndOf(std::string_view pgn);

// Whether the NAG is an assessment of who stands better, 10 to 21.
constexpr bool IsAssessment(int nag) { return nag >= 10 && nag <= 21; }
// The node's last assessment; 0 where it has none.
int AssessmentOf(const GameNode& node);

}  // namespace assay

#endif  // ASSAY_LESSON_OWN_COMMENTS_H_
