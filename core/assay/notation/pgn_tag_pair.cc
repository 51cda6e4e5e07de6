#include "assay/notation/pgn_tag_pair.h"

#include "assay/notation/pgn_text.h"

namespace assay {
namespace {

bool IsLineEnd(char c) { return c == '\n' || c == '\r'; }

std::size_t SkipSpace(std::string_view text, std::size_t at) {
  while (at < text.size() && IsPgnSpace(text[at])) ++at;
  return at;
}

std::size_t SkipName(std::string_view text, std::size_t at) {
  while (at < text.size() && IsTagNameByte(text[at])) ++at;
  return at;
}

// The first line end from there on, or the text's end.
std::size_t LineEnd(std::string_view text, std::size_t at) {
  while (at < text.size() && !IsLineEnd(text[at])) ++at;
  return at;
}

// Past one line end.
std::size_t NextLine(std::string_view text, std::size_t at) {
  if (at < text.size() && text[at] == '\r') ++at;
  if (at < text.size() && text[at] == '\n') ++at;
  return at;
}

TagPairReading Fault(std::string reason, std::string_view found,
                     std::string expected, std::size_t bytes) {
  TagPairReading reading;
  reading.problem = {"tag", std::move(reason), Quoted(found),
                     std::move(expected)};
  reading.bytes = bytes;
  return reading;
}

// A value that its line does not end: its rest is the next line where that
// ends like a tag pair and does not begin like one.
std::size_t BytesOfBrokenValue(std::string_view text, std::size_t line_end) {
  const std::size_t next = NextLine(text, line_end);
  std::size_t end = LineEnd(text, next);
  const std::size_t next_end = end;
  while (end > next && IsPgnSpace(text[end - 1])) --end;
  const bool closes =
      end - next >= 2 && text[next] != '[' && text.substr(end - 2, 2) == "\"]";
  return closes ? next_end : line_end;
}

}  // namespace

TagPairReading ReadTagPair(std::string_view text) {
  const std::size_t first_line = LineEnd(text, 0);
  const std::size_t name_at = SkipSpace(text, 1);
  const std::size_t name_end = SkipName(text, name_at);
  if (name_end == name_at || name_end - name_at > kMostPgnSymbolBytes) {
    return Fault(name_end == name_at ? "no name" : "name too long",
                 text.substr(0, first_line),
                 "a name of at most " + std::to_string(kMostPgnSymbolBytes) +
                     " letters, digits and _+#=:-",
                 first_line);
  }
  std::size_t at = SkipSpace(text, name_end);
  if (at >= text.size() || text[at] != '"') {
    return Fault("no value", text.substr(0, first_line),
                 "a text in double quotes", LineEnd(text, name_end));
  }
  TagPairReading reading;
  reading.name = text.substr(name_at, name_end - name_at);
  const std::size_t value_at = ++at;
  while (at < text.size() && text[at] != '"' && !IsLineEnd(text[at])) {
    const bool escape = text[at] == '\\' && at + 1 < text.size() &&
                        (text[at + 1] == '"' || text[at + 1] == '\\');
    if (escape) ++at;
    reading.value += text[at++];
  }
  if (at - value_at > kMostPgnTagValueBytes) {
    return Fault("value too long", text.substr(0, LineEnd(text, 0)),
                 "at most " + std::to_string(kMostPgnTagValueBytes) + " bytes",
                 LineEnd(text, at));
  }
  if (at >= text.size() || IsLineEnd(text[at])) {
    return Fault("value not closed", text.substr(0, at), "\" on the same line",
                 BytesOfBrokenValue(text, at));
  }
  const std::size_t value_end = ++at;
  at = SkipSpace(text, at);
  if (at >= text.size() || text[at] != ']') {
    return Fault("not closed", text.substr(0, LineEnd(text, value_end)),
                 "\"]\"", LineEnd(text, value_end));
  }
  reading.ok = true;
  reading.bytes = at + 1;
  return reading;
}

bool LooksLikeTagPair(std::string_view text) {
  const auto skip_blanks = [text](std::size_t at) {
    while (at < text.size() && (text[at] == ' ' || text[at] == '\t')) ++at;
    return at;
  };
  if (text.empty() || text[0] != '[') return false;
  const std::size_t name_at = skip_blanks(1);
  const std::size_t name_end = SkipName(text, name_at);
  const std::size_t quote_at = skip_blanks(name_end);
  return name_end > name_at && quote_at < text.size() && text[quote_at] == '"';
}

}  // namespace assay
