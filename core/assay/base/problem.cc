#include "assay/base/problem.h"

namespace assay {
namespace {

constexpr std::size_t kLongestQuote = 40;

}  // namespace

std::string ToString(const Problem& problem) {
  std::string text = problem.field + ": " + problem.reason;
  if (!problem.found.empty()) text += ": found " + problem.found;
  if (!problem.expected.empty()) text += ", expected " + problem.expected;
  return text;
}

std::string Quoted(std::string_view text) {
  constexpr char kHex[] = "0123456789abcdef";
  std::string quoted = "\"";
  for (const char c : text.substr(0, kLongestQuote)) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 0x20 && byte < 0x7F) {
      quoted += c;
    } else {
      quoted += {'\\', 'x', kHex[byte >> 4U], kHex[byte & 15U]};
    }
  }
  quoted += '"';
  if (text.size() > kLongestQuote) {
    quoted += "... (" + std::to_string(text.size()) + " bytes)";
  }
  return quoted;
}

}  // namespace assay
