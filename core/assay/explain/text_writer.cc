#include "assay/explain/text_writer.h"

#include <algorithm>
#include <cstdlib>

namespace assay {

std::string AmountText(Centipawns value) {
  const int size = std::abs(value);
  const std::string hundredths = std::to_string(size % 100);
  return std::to_string(size / 100) + "." +
         (hundredths.size() == 1 ? "0" : "") + hundredths;
}

// Letters, not bytes: of UTF-8, all but those that go on with a letter.
std::size_t Width(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(),
      [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string PawnsText(Centipawns value) {
  const char* sign = value > 0 ? "+" : value < 0 ? "-" : "";
  return sign + AmountText(value);
}

std::string Padded(const std::string& text, std::size_t width) {
  const std::size_t wide = Width(text);
  return wide >= width ? text : std::string(width - wide, ' ') + text;
}

void TextWriter::Wrapped(const std::string& first, const std::string& words) {
  std::string line = first;
  bool line_is_empty = true;
  std::size_t at = 0;
  while (at < words.size()) {
    const std::size_t end = std::min(words.find(' ', at), words.size());
    const std::string word = words.substr(at, end - at);
    if (!line_is_empty && line.size() + 1 + word.size() > style_.width) {
      Plain(line);
      line.assign(first.size(), ' ');
      line_is_empty = true;
    }
    if (!line_is_empty) line += ' ';
    line += word;
    line_is_empty = false;
    at = end + 1;
  }
  Plain(line);
}

void TextWriter::Styled(const char* code, const std::string& line) {
  Plain(style_.colour ? code + line + "\x1b[0m" : line);
}

}  // namespace assay
