// What German never has in it: English words, and gaps that a template leaves.
// Function words of English: common knowledge.
#ifndef ASSAY_TESTS_EXPLAIN_GERMAN_WORDS_H_
#define ASSAY_TESTS_EXPLAIN_GERMAN_WORDS_H_

#include <regex>
#include <string>

#include "gtest/gtest.h"

namespace assay::testing_support {

inline void ExpectGerman(std::string text) {
  static const std::regex english(
      "\\b(the|of|and|with|is|are|has|have|for|from|it|its|that|which|no|"
      "on|by|can|pawns?|knights?|bishops?|rooks?|queens?|kings?|white|black|"
      "White|Black|square|squares|file|files|side|move|moves|plan|better|"
      "wins|passed|open|structure|centre|than|now|after|less|before)\\b");
  static const std::regex gap("[{}|]|  |\\( *\\)|[.:;,] *[.:;,]|: *\\n");
  std::smatch hit;
  EXPECT_FALSE(std::regex_search(text, hit, english))
      << hit.str() << " in " << text;
  // Moves of Black apart from a line begin with dots.
  text = std::regex_replace(text, std::regex("\\.\\.\\."), "");
  EXPECT_FALSE(std::regex_search(text, hit, gap))
      << hit.str() << " in " << text;
}

// The words of the one colour for those of the other; squares and files without
// names, since of equal pieces the one on the lower square is told.
inline std::string WithColoursSwapped(std::string text) {
  text = std::regex_replace(text, std::regex("\\b[a-h][1-8]\\b"), "#");
  text = std::regex_replace(text, std::regex("([Ww])eiß"), "<$1>");
  text = std::regex_replace(text, std::regex("schwarz"), "weiß");
  text = std::regex_replace(text, std::regex("Schwarz"), "Weiß");
  text = std::regex_replace(text, std::regex("<w>"), "schwarz");
  return std::regex_replace(text, std::regex("<W>"), "Schwarz");
}

}  // namespace assay::testing_support

#endif  // ASSAY_TESTS_EXPLAIN_GERMAN_WORDS_H_
