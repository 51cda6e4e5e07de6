// PGN text as tokens (PGN standard of 1994, sections 5 to 7).
//
// PgnLexer belongs to one thread. It never fails: what is no token of the
// standard is a token of kind kJunk, kBadTag or kBadComment, and it goes on
// after it. Periods are passed over, and so are lines that begin with "%"
// (6), byte order marks at the beginning of a line, and "e.p.".
//
// A brace comment ends at the first "}" (5). One that nothing closes would
// swallow the rest of the file; it is taken to be unclosed where a line in it
// begins with a tag pair and "{", or the file's end, or the limit of a comment
// comes before the next "}". It then ends before that tag pair.
#ifndef ASSAY_NOTATION_PGN_LEXER_H_
#define ASSAY_NOTATION_PGN_LEXER_H_

#include <cstdint>
#include <string>
#include <string_view>

#include "assay/base/problem.h"
#include "assay/notation/pgn_input.h"
#include "assay/notation/pgn_tree.h"

namespace assay {

struct PgnToken {
  enum class Kind : std::uint8_t {
    kEnd,         // of the file
    kTag,         // a whole tag pair; text is its name
    kBadTag,      // see PgnLexer::problem()
    kSymbol,      // a move, or what stands in its place; "--" is one
    kNumber,      // digits alone: a move number
    kResult,      // one of the four terminators, or "1/2"
    kNag,         // "$" and digits; text is the digits, perhaps none
    kMark,        // a run of "!" and "?"
    kSign,        // a run of +-=/~# such as "+/-"
    kOpen,        // "("
    kClose,       // ")"
    kComment,     // text is all between its signs
    kBadComment,  // see PgnLexer::problem(); text is its beginning
    kJunk,        // anything else
  };

  Kind kind = Kind::kEnd;
  PgnComment::Kind comment_kind = PgnComment::Kind::kBraces;
  bool line_start = false;   // the first token of its line
  bool after_blank = false;  // an empty line lies before it
  std::string_view text;     // valid until the next token is asked for
  std::uint64_t line = 0;
  std::uint64_t column = 0;
  std::uint64_t offset = 0;  // of its first byte in the file
};

class PgnLexer {
 public:
  enum class Context : std::uint8_t {
    kTags,     // "[" begins a tag pair
    kMovetext  // only at the beginning of a line, and if it looks like one
  };

  explicit PgnLexer(PgnInput input);

  PgnToken Next(Context context);

  // The value of the last kTag.
  const std::string& tag_value() const { return tag_value_; }
  // What is wrong with the last kBadTag or kBadComment.
  const Problem& problem() const { return problem_; }

 private:
  void SkipSpace();
  void SkipLine();
  void ReadTag(PgnToken& token);
  void ReadBraces(PgnToken& token);
  void ReadToLineEnd(PgnToken& token);
  void SkipLongComment();
  bool ReadSymbol(PgnToken& token);  // false for "e.p."
  void ReadOther(PgnToken& token);
  void Take(PgnToken& token, PgnToken::Kind kind, std::size_t size);
  bool TagLineAhead();

  PgnInput input_;
  std::uint64_t token_end_line_ = 0;
  std::size_t pending_ = 0;  // bytes of the last token, not yet consumed
  std::uint64_t no_brace_until_ = 0;  // no "}" from here to this offset
  std::string tag_value_;
  Problem problem_;
};

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_LEXER_H_
