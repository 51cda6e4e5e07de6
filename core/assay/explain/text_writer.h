// Lines of text: wrapped sentences, values in pawns, bold and dim where asked.
#ifndef ASSAY_EXPLAIN_TEXT_WRITER_H_
#define ASSAY_EXPLAIN_TEXT_WRITER_H_

#include <string>
#include <string_view>

#include "assay/base/score.h"
#include "assay/explain/audience.h"

namespace assay {

struct TextStyle {
  bool colour = false;     // ANSI bold and dim; for terminals only
  bool ledger = false;     // every entry with its value
  std::size_t width = 80;  // columns that sentences are wrapped to
  // Of the words around the texts: Catalogue::Of.
  std::string language;
  Audience audience = Audience::kClub;
};

// Centipawns as signed pawns with two decimals: "+0.42", "-1.05", "0.00".
std::string PawnsText(Centipawns value);

// The same without a sign: "0.42".
std::string AmountText(Centipawns value);

// How many columns the text takes.
std::size_t Width(std::string_view text);

// With blanks before it, up to the width.
std::string Padded(const std::string& text, std::size_t width);

class TextWriter {
 public:
  explicit TextWriter(const TextStyle& style) : style_(style) {}

  void Plain(const std::string& line) { text_ += line + '\n'; }
  void Bold(const std::string& line) { Styled("\x1b[1m", line); }
  void Dim(const std::string& line) { Styled("\x1b[2m", line); }

  // Words wrapped to the width; the first line starts with `first`, the others
  // with as many blanks.
  void Wrapped(const std::string& first, const std::string& words);

  std::string Take() { return std::move(text_); }

 private:
  void Styled(const char* code, const std::string& line);

  const TextStyle style_;
  std::string text_;
};

}  // namespace assay

#endif  // ASSAY_EXPLAIN_TEXT_WRITER_H_
