// Each token is found in the window of PgnInput and stays there until the next
// one is asked for: its text is a view, and nothing is copied but tag pairs.
#include "assay/notation/pgn_lexer.h"

#include <algorithm>
#include <array>
#include <utility>

#include "assay/notation/pgn_limits.h"
#include "assay/notation/pgn_tag_pair.h"

namespace assay {
namespace {

using Kind = PgnToken::Kind;

enum : std::uint8_t {
  kSymbolFirst = 1,
  kSymbolByte = 2,
  kJunkEnd = 4,  // white space and what is a token by itself
  kSignByte = 8,
};

constexpr std::array<std::uint8_t, 256> MakeClasses() {
  std::array<std::uint8_t, 256> classes{};
  for (int c = 0; c < 256; ++c) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    const bool digit = c >= '0' && c <= '9';
    if (letter || digit) classes[c] = kSymbolFirst | kSymbolByte;
    if (c == ' ' || (c >= 9 && c <= 13)) classes[c] = kJunkEnd;
  }
  // The slash is none of the standard's symbol bytes but of its terminators.
  for (const char c : {'_', '+', '#', '=', ':', '-', '/'}) {
    classes[static_cast<unsigned char>(c)] |= kSymbolByte;
  }
  for (const char c : {'+', '-', '=', '/', '~', '#'}) {
    classes[static_cast<unsigned char>(c)] |= kSignByte;
  }
  for (const char c :
       {'{', '}', '[', ']', '(', ')', '*', ';', '$', '"', '<', '>'}) {
    classes[static_cast<unsigned char>(c)] |= kJunkEnd;
  }
  return classes;
}

constexpr std::array<std::uint8_t, 256> kClasses = MakeClasses();

bool Is(char c, std::uint8_t what) {
  return (kClasses[static_cast<unsigned char>(c)] & what) != 0;
}

bool IsDigit(char c) { return c >= '0' && c <= '9'; }
bool IsLineEnd(char c) { return c == '\n' || c == '\r'; }

// The length of the run of bytes that hold, from an offset on.
template <class Holds>
std::size_t RunEnd(std::string_view text, std::size_t at, Holds holds) {
  const std::size_t limit = std::min(text.size(), kMostPgnSymbolBytes);
  while (at < limit && holds(text[at])) ++at;
  return at;
}

Kind SymbolKind(std::string_view text) {
  if (!IsDigit(text[0])) return Kind::kSymbol;
  if (text == "1-0" || text == "0-1" || text == "1/2-1/2" || text == "1/2") {
    return Kind::kResult;
  }
  return std::all_of(text.begin(), text.end(), IsDigit) ? Kind::kNumber
                                                        : Kind::kSymbol;
}

// The first line of a comment, its own first aside, that a tag pair begins.
std::size_t FindTagLine(std::string_view text) {
  for (std::size_t at = text.find('['); at != std::string_view::npos;
       at = text.find('[', at + 1)) {
    if (at > 0 && IsLineEnd(text[at - 1]) &&
        LooksLikeTagPair(text.substr(at, kMostPgnTagPairBytes))) {
      return at;
    }
  }
  return std::string_view::npos;
}

}  // namespace

PgnLexer::PgnLexer(PgnInput input) : input_(std::move(input)) {}

void PgnLexer::Take(PgnToken& token, Kind kind, std::size_t size) {
  token.kind = kind;
  token.text = input_.window().substr(0, size);
  pending_ = size;
}

void PgnLexer::SkipLine() {
  while (input_.Want(1)) {
    const std::string_view window = input_.window();
    std::size_t at = 0;
    while (at < window.size() && !IsLineEnd(window[at])) ++at;
    input_.ConsumeInLine(at);
    if (at < window.size()) return;
  }
}

void PgnLexer::SkipSpace() {
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  while (input_.Want(1)) {
    const char c = input_.window()[0];
    if (IsPgnSpace(c)) {
      input_.Consume(1);
    } else if (c == '.') {
      input_.ConsumeInLine(1);
    } else if (c == '%' && input_.column() == 1) {
      SkipLine();
    } else if (c == '\xEF' && input_.column() == 1 && input_.Want(3) &&
               input_.window().substr(0, 3) == kByteOrderMark) {
      input_.ConsumeInLine(3);
    } else {
      return;
    }
  }
}

PgnToken PgnLexer::Next(Context context) {
  PgnToken token;
  while (true) {
    if (pending_ > 0) {
      input_.Consume(pending_);
      pending_ = 0;
      token_end_line_ = input_.line();
    }
    SkipSpace();
    token.line = input_.line();
    token.column = input_.column();
    token.offset = input_.offset();
    token.line_start = token.line > token_end_line_;
    token.after_blank = token.line > token_end_line_ + 1;
    if (!input_.Want(1)) return token;
    input_.Want(kMostPgnSymbolBytes + 4);
    const char c = input_.window()[0];
    if (Is(c, kSymbolFirst)) {
      if (!ReadSymbol(token)) continue;
    } else if (c == '{') {
      ReadBraces(token);
    } else if (c == ';') {
      ReadToLineEnd(token);
    } else if (c == '[' && (context == Context::kTags ||
                            (token.line_start && TagLineAhead()))) {
      ReadTag(token);
    } else {
      ReadOther(token);
    }
    return token;
  }
}

bool PgnLexer::TagLineAhead() {
  input_.Want(kMostPgnTagPairBytes);
  return LooksLikeTagPair(input_.window().substr(0, kMostPgnTagPairBytes));
}

bool PgnLexer::ReadSymbol(PgnToken& token) {
  const std::string_view window = input_.window();
  std::size_t size =
      RunEnd(window, 1, [](char c) { return Is(c, kSymbolByte); });
  if (window[size - 1] == 'e' && window.substr(size - 1, 4) == "e.p.") {
    if (size == 1) {
      pending_ = 4;
      return false;
    }
    --size;  // "exd6e.p.": the rest is passed over as the next token
  }
  Take(token, SymbolKind(window.substr(0, size)), size);
  return true;
}

void PgnLexer::ReadTag(PgnToken& token) {
  input_.Want(kMostPgnTagPairBytes);
  TagPairReading reading =
      ReadTagPair(input_.window().substr(0, kMostPgnTagPairBytes));
  if (!reading.ok) {
    problem_ = std::move(reading.problem);
    input_.Consume(reading.bytes);
    SkipLine();
    token.kind = Kind::kBadTag;
    token.text = {};
    token_end_line_ = input_.line();
    return;
  }
  tag_value_ = std::move(reading.value);
  token.kind = Kind::kTag;
  token.text = reading.name;
  pending_ = reading.bytes;
}

void PgnLexer::ReadToLineEnd(PgnToken& token) {
  input_.Want(kMostPgnCommentBytes + 2);
  const std::string_view window =
      input_.window().substr(0, kMostPgnCommentBytes + 2);
  std::size_t end = 1;
  while (end < window.size() && !IsLineEnd(window[end])) ++end;
  token.comment_kind = PgnComment::Kind::kToLineEnd;
  if (end - 1 <= kMostPgnCommentBytes) {
    Take(token, Kind::kComment, end);
    token.text.remove_prefix(1);
    return;
  }
  problem_ = {"comment", "too long", Quoted(window),
              "at most " + std::to_string(kMostPgnCommentBytes) + " bytes"};
  token.kind = Kind::kBadComment;
  SkipLine();
  token_end_line_ = input_.line();
}

void PgnLexer::ReadBraces(PgnToken& token) {
  // Where the comment before had no end either, nothing is searched twice.
  std::size_t at = 1;
  if (no_brace_until_ > input_.offset()) {
    at = static_cast<std::size_t>(no_brace_until_ - input_.offset());
  }
  constexpr std::size_t kMost = kMostPgnCommentBytes + 2;
  std::size_t close = std::string_view::npos;
  while (true) {
    const std::string_view window = input_.window().substr(0, kMost);
    if (at < window.size()) close = window.find('}', at);
    if (close != std::string_view::npos) break;
    at = std::max(at, window.size());
    if (window.size() == kMost || !input_.Want(window.size() + 1)) break;
  }
  no_brace_until_ = input_.offset() + std::min(close, at);
  const std::string_view text =
      input_.window().substr(0, std::min(close, kMost));
  const bool closed = close != std::string_view::npos;
  std::size_t tag_line = std::string_view::npos;
  const std::size_t reopened = text.find('{', 1);
  if (!closed || reopened != std::string_view::npos) {
    tag_line = FindTagLine(closed ? text.substr(0, reopened) : text);
  }
  if (closed && tag_line == std::string_view::npos) {
    Take(token, Kind::kComment, close + 1);
    token.text = token.text.substr(1, close - 1);
    return;
  }
  const bool too_long =
      tag_line == std::string_view::npos && text.size() > kMostPgnCommentBytes;
  problem_ = {"comment", too_long ? "too long" : "not closed",
              Quoted(text.substr(0, std::min(tag_line, text.size()))),
              too_long
                  ? "at most " + std::to_string(kMostPgnCommentBytes) + " bytes"
                  : "\"}\""};
  token.kind = Kind::kBadComment;
  if (too_long) {
    SkipLongComment();
  } else {
    input_.Consume(std::min(tag_line, text.size()));
  }
  token_end_line_ = input_.column() == 1 ? input_.line() - 1 : input_.line();
}

void PgnLexer::SkipLongComment() {
  while (input_.Want(1)) {
    const std::string_view window = input_.window();
    std::size_t at = 0;
    while (at < window.size() && window[at] != '}' && !IsLineEnd(window[at])) {
      ++at;
    }
    if (at == window.size()) {
      input_.ConsumeInLine(at);
      continue;
    }
    const bool closes = window[at] == '}';
    input_.Consume(at + 1);
    if (closes ||
        (input_.Want(1) && input_.window()[0] == '[' && TagLineAhead())) {
      return;
    }
  }
}

void PgnLexer::ReadOther(PgnToken& token) {
  const std::string_view window = input_.window();
  const char c = window[0];
  switch (c) {
    case '(':
      return Take(token, Kind::kOpen, 1);
    case ')':
      return Take(token, Kind::kClose, 1);
    case '*':
      return Take(token, Kind::kResult, 1);
    case '$':
      Take(token, Kind::kNag, RunEnd(window, 1, IsDigit));
      token.text.remove_prefix(1);
      return;
    case '!':
    case '?':
      return Take(token, Kind::kMark, RunEnd(window, 1, [](char next) {
                    return next == '!' || next == '?';
                  }));
    default:
      break;
  }
  if (Is(c, kSignByte)) {
    Take(token, Kind::kSign,
         RunEnd(window, 1, [](char next) { return Is(next, kSignByte); }));
    if (token.text == "--") token.kind = Kind::kSymbol;
    return;
  }
  Take(token, Kind::kJunk, RunEnd(window, 1, [c](char next) {
         return !Is(c, kJunkEnd) && !Is(next, kJunkEnd);
       }));
}

}  // namespace assay
