// Lines of less than 80 characters, filled with as many tokens as they take.
#ifndef ASSAY_NOTATION_PGN_FILLER_H_
#define ASSAY_NOTATION_PGN_FILLER_H_

#include <cstddef>
#include <string>
#include <string_view>

#include "assay/notation/pgn_text.h"

namespace assay {

// Characters of a line in export format: "less than 80" (PGN standard of
// 1994, 4.3 and 8.2.1).
inline constexpr std::size_t kMostPgnLineCharacters = 79;

// Fills lines of a movetext. Belongs to one writer; text comes out at the end
// of the string given.
class PgnFiller {
 public:
  PgnFiller(std::string& out, PgnEncoding encoding)
      : out_(out), encoding_(encoding) {}

  // A token that a space or a line end parts from the one before it.
  void Token(std::string_view text);
  // More of the token before; of the next one after Join().
  void Suffix(std::string_view text) {
    word_ += text;
    joined_ = false;
  }
  // The next token follows this one directly: after "(".
  void Join() { joined_ = true; }
  // The words of a comment, signs included, each a token of its own. One that
  // begins with "%", or with "[" and a letter, stays with the word before it:
  // at the beginning of a line it would be read as something else.
  void Words(std::string_view text);
  // Ends the line, if it has text.
  void EndLine();
  bool at_line_start() const { return column_ == 0 && word_.empty(); }

 private:
  void Flush();

  std::string& out_;
  PgnEncoding encoding_;
  std::string word_;  // not yet placed
  std::size_t column_ = 0;
  bool joined_ = false;
};

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_FILLER_H_
