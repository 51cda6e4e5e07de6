#include "assay/notation/pgn_filler.h"

namespace assay {
namespace {

bool IsLetter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool MayBeginLine(std::string_view word) {
  return word[0] != '%' &&
         (word[0] != '[' || word.size() == 1 || !IsLetter(word[1]));
}

}  // namespace

void PgnFiller::Flush() {
  if (word_.empty()) return;
  // A word with line ends in it (a comment kept as it is) counts up to its
  // first one, and its last line is where the next word goes on.
  const std::size_t first = word_.find_first_of("\r\n");
  const std::size_t last = word_.find_last_of("\r\n");
  const std::string_view word = word_;
  const std::size_t head = CountCharacters(word.substr(0, first), encoding_);
  if (column_ > 0) {
    const bool fits = column_ + 1 + head <= kMostPgnLineCharacters;
    out_ += fits ? ' ' : '\n';
    column_ = fits ? column_ + 1 : 0;
  }
  out_ += word_;
  column_ = last == std::string::npos
                ? column_ + head
                : CountCharacters(word.substr(last + 1), encoding_);
  word_.clear();
}

void PgnFiller::Token(std::string_view text) {
  if (!joined_) Flush();
  joined_ = false;
  word_ += text;
}

void PgnFiller::Words(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    std::size_t end = at;
    while (end < text.size() && !IsPgnSpace(text[end])) ++end;
    const std::string_view word = text.substr(at, end - at);
    if (MayBeginLine(word)) {
      Token(word);
    } else {
      word_ += ' ';
      word_ += word;
    }
    while (end < text.size() && IsPgnSpace(text[end])) ++end;
    at = end;
  }
}

void PgnFiller::EndLine() {
  Flush();
  joined_ = false;
  if (column_ > 0) out_ += '\n';
  column_ = 0;
}

}  // namespace assay
