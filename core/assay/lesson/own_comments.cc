#include "assay/lesson/own_comments.h"

#include <algorithm>

#include "assay/notation/pgn_filler.h"
#include "assay/notation/pgn_limits.h"
#include "assay/notation/pgn_scanner.h"
#include "assay/notation/pgn_writer.h"

namespace assay {
namespace {

constexpr std::string_view kMark = "[%assay";
// Of a comment before the first move: the line end comes after it.
constexpr std::string_view kStartMark = "[%assay start";

// Words without commands, white space as single blanks.
std::string WordsOf(std::string_view text) {
  std::string words;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.substr(i, 2) == "[%") {
      const std::size_t close = text.find(']', i);
      if (close == std::string_view::npos) break;
      i = close;
    } else if (!IsPgnSpace(text[i])) {
      words += text[i];
    } else if (!words.empty() && words.back() != ' ') {
      words += ' ';
    }
  }
  if (!words.empty() && words.back() == ' ') words.pop_back();
  return words;
}

// Whether the mark is here, and not a longer word.
bool MarkAt(std::string_view text, std::size_t at) {
  if (text.substr(at, kMark.size()) != kMark) return false;
  const std::string_view next = text.substr(at + kMark.size(), 1);
  return next == "]" || next == " ";
}

struct Span {
  std::uint64_t begin = 0;
  std::uint64_t end = 0;
};

struct PlacedNag {
  std::string digits;
  Span span;
};

// The line end just before the offset, or just after it, as a length.
std::uint64_t LineEndBefore(std::string_view text, std::uint64_t at) {
  if (at == 0 || text[at - 1] != '\n') return 0;
  return at >= 2 && text[at - 2] == '\r' ? 2 : 1;
}
std::uint64_t LineEndAfter(std::string_view text, std::uint64_t at) {
  if (text.substr(at, 2) == "\r\n") return 2;
  return text.substr(at, 1) == "\n" ? 1 : 0;
}

// The bytes of our words in a comment, with the line end that came with them
// and, where all of it is ours, the braces.
Span OursAt(std::string_view pgn, const PgnToken& token) {
  const std::size_t begin = OursBegin(token.text);
  const std::uint64_t end = token.offset + 1 + token.text.size();
  if (begin > 0) return {token.offset + 1 + begin, end};
  Span span{token.offset, end + 1};
  if (token.text.substr(0, kStartMark.size()) == kStartMark) {
    span.end += LineEndAfter(pgn, span.end);
  } else {
    span.begin -= LineEndBefore(pgn, span.begin);
  }
  return span;
}

}  // namespace

std::size_t OursBegin(std::string_view text) {
  if (MarkAt(text, 0)) return 0;
  for (std::size_t at = 0; (at = text.find('\n', at)) != std::string_view::npos;
       ++at) {
    if (!MarkAt(text, at + 1)) continue;
    return at > 0 && text[at - 1] == '\r' ? at - 1 : at;
  }
  return std::string_view::npos;
}

std::string OurWords(std::string_view text) {
  const std::size_t begin = OursBegin(text);
  return begin == std::string_view::npos ? "" : WordsOf(text.substr(begin));
}

int OurNag(std::string_view text) {
  const std::size_t begin = OursBegin(text);
  if (begin == std::string_view::npos) return 0;
  text.remove_prefix(begin);
  const std::size_t close = text.find(']');
  std::size_t at = text.substr(0, close).find('$');
  int nag = 0;
  if (at == std::string_view::npos) return 0;
  for (++at; at < text.size() && text[at] >= '0' && text[at] <= '9'; ++at) {
    nag = std::min(nag * 10 + (text[at] - '0'), kMostPgnNag + 1);
  }
  return nag;
}

std::string AuthorWords(std::string_view text) {
  return WordsOf(text.substr(0, OursBegin(text)));
}

std::string AuthorWords(const GameTree& tree, const GameNode& node) {
  std::string all;
  for (const PgnComment& comment : node.comments) {
    const std::string words = AuthorWords(comment.text);
    if (words.empty()) continue;
    if (!all.empty()) all += ' ';
    all += words;
  }
  return ToUtf8(all, tree.encoding);
}

std::string WithoutOurs(std::string_view pgn) {
  if (pgn.find(kMark) == std::string_view::npos) return std::string(pgn);
  std::vector<Span> ours;
  PgnScanner scanner{PgnInput(pgn)};
  while (scanner.StartGame()) {
    PgnToken token;
    std::vector<PlacedNag> nags;  // of the move
    while (scanner.Next(token)) {
      if (token.kind == PgnToken::Kind::kSymbol) nags.clear();
      if (token.kind == PgnToken::Kind::kNag) {
        nags.push_back({std::string(token.text),
                        {token.offset, token.offset + 1 + token.text.size()}});
      }
      if (token.kind != PgnToken::Kind::kComment ||
          token.comment_kind != PgnComment::Kind::kBraces ||
          OursBegin(token.text) == std::string_view::npos) {
        continue;
      }
      const int added = OurNag(token.text);
      // The author has no assessment where we add one: there is one at most.
      for (const PlacedNag& nag : nags) {
        if (added == 0 || nag.digits != std::to_string(added)) continue;
        if (nag.span.begin == 0 || pgn[nag.span.begin - 1] != ' ') continue;
        ours.push_back({nag.span.begin - 1, nag.span.end});
      }
      ours.push_back(OursAt(pgn, token));
    }
  }
  std::string kept;
  std::uint64_t at = 0;
  for (const Span& span : ours) {
    if (span.begin < at) continue;
    kept += pgn.substr(at, span.begin - at);
    at = span.end;
  }
  kept += pgn.substr(at);
  return kept;
}

std::vector<Insertion> InsertionsAt(const PgnItem& item, NodeIndex node,
                                    int nag, std::string_view words,
                                    std::string_view line_end) {
  const PgnExtent& extent = item.extents[node];
  const GameNode& at = item.tree.nodes[node];
  const bool mark = nag != 0 && !at.starts_line && AssessmentOf(at) == 0 &&
                    at.nags.size() < kMostPgnNags;
  const bool within = extent.brace != 0;
  const bool first = node == 0 && !within && extent.comments == extent.marks;
  const std::string text = std::string(first ? kStartMark : kMark) +
                           (mark ? " $" + std::to_string(nag) : "") + "] " +
                           std::string(words);
  const std::string safe = MakeComment(text).text;
  std::string filled;
  PgnFiller filler(filled, PgnEncoding::kUtf8);
  filler.Words(within ? safe : "{" + safe + "}");
  filler.EndLine();
  filled.pop_back();
  if (line_end != "\n") {
    for (std::size_t i = 0; (i = filled.find('\n', i)) != std::string::npos;
         i += line_end.size()) {
      filled.replace(i, 1, line_end);
    }
  }
  std::vector<Insertion> insertions;
  if (mark) insertions.push_back({extent.marks, " $" + std::to_string(nag)});
  const std::string end(line_end);
  insertions.push_back({within ? extent.brace : extent.comments,
                        first ? filled + end : end + filled});
  return insertions;
}

std::string_view LineEndOf(std::string_view pgn) {
  const std::size_t at = pgn.find('\n');
  const bool with_return =
      at != std::string_view::npos && at > 0 && pgn[at - 1] == '\r';
  return with_return ? "\r\n" : "\n";
}

int AssessmentOf(const GameNode& node) {
  int assessment = 0;
  for (const std::uint8_t nag : node.nags) {
    if (IsAssessment(nag)) assessment = nag;
  }
  return assessment;
}

}  // namespace assay
