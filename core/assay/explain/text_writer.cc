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

std::string PawnsText(Centipawns value) {
  const char* sign = value > 0 ? "+" : value < 0 ? "-" : "";
  return sign + AmountText(value);
}

std::string Padded(const std::string& text, std::size_t width) {
  return text.size() >= width ? text
                              : std::string(width - text.size(), ' ') + text;
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
