// One tag pair, such as [Event "Open"], at the front of a text (PGN standard
// of 1994, 8.1.1): a left bracket, a name, a string, a right bracket, with
// white space between them as the author likes.
#ifndef ASSAY_NOTATION_PGN_TAG_PAIR_H_
#define ASSAY_NOTATION_PGN_TAG_PAIR_H_

#include <cstddef>
#include <string>
#include <string_view>

#include "assay/base/problem.h"
#include "assay/notation/pgn_limits.h"

namespace assay {

// Bytes of text that ReadTagPair() needs to judge any tag pair within limits:
// white space counts, too.
inline constexpr std::size_t kMostPgnTagPairBytes =
    kMostPgnSymbolBytes + kMostPgnTagValueBytes + 256;

struct TagPairReading {
  bool ok = false;
  std::string_view name;  // of the text given
  std::string value;      // \" and \\ resolved (standard, 7)
  std::size_t bytes = 0;  // of the pair; of what to skip where it is not ok
  Problem problem;        // of field "tag", where it is not ok
};

// The text begins with "[". A faulty pair is skipped to the end of the line
// where its fault shows, or of the next one where that is the rest of its
// value.
TagPairReading ReadTagPair(std::string_view text);

// Whether the text begins with what nothing but a tag pair begins with: a left
// bracket, a name and a quote, on one line.
bool LooksLikeTagPair(std::string_view text);

constexpr bool IsTagNameByte(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
         (c >= '0' && c <= '9') || c == '_' || c == '+' || c == '#' ||
         c == '=' || c == ':' || c == '-';
}

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_TAG_PAIR_H_
