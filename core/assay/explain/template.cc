#include "assay/explain/template.h"

#include <algorithm>

namespace assay {

std::string_view Cut(std::string_view& text, char separator) {
  int depth = 0;
  std::size_t at = 0;
  for (; at < text.size(); ++at) {
    if (text[at] == '{') ++depth;
    if (text[at] == '}') --depth;
    if (depth == 0 && text[at] == separator) break;
  }
  const std::string_view part = text.substr(0, at);
  text.remove_prefix(std::min(at + 1, text.size()));
  return part;
}

std::string_view Pick(std::string_view alternatives, char separator,
                      std::size_t wanted) {
  std::string_view picked;
  for (std::size_t i = 0; i <= wanted && !alternatives.empty(); ++i) {
    picked = Cut(alternatives, separator);
  }
  return picked;
}

Field::Field(std::string_view words) {
  const std::string_view first = Cut(words, ' ');
  if (first.size() == 1 && first[0] >= '1' && first[0] <= '9') {
    index = first[0] - '1';
  } else {
    by_case = first == "case";
    by_order = first == "order";
  }
  while (!words.empty()) Note(Cut(words, ' '));
}

void Field::Note(std::string_view word) {
  if (word == "nom") SetCase(Case::kNominative);
  if (word == "acc") SetCase(Case::kAccusative);
  if (word == "dat") SetCase(Case::kDative);
  if (word == "gen") SetCase(Case::kGenitive);
  if (word == "after") after = true;
  if (word == "def") article = "article.def";
  if (word == "indef") article = "article.indef";
  if (word == "plural") plural = true;
  if (word == "digits") digits = true;
  if (word == "cap") capital = true;
  if (word == "known") known = true;
  if (word == "bare") bare = true;
  if (word == "if") by_presence = true;
  if (word == "gender") by_gender = true;
  if (word == "side") by_side = true;
}

void Field::SetCase(Case wanted) {
  in_case = wanted;
  has_case = true;
}

Template::Template(std::string_view text) {
  while (!text.empty()) {
    const std::size_t open = std::min(text.find('{'), text.size());
    Part part;
    part.words = text.substr(0, open);
    text.remove_prefix(open);
    if (!text.empty()) {
      std::string_view field = Cut(text, '}').substr(1);
      part.has_field = true;
      part.field = Field(Cut(field, '|'));
      while (!field.empty()) part.alternatives.emplace_back(Cut(field, '|'));
    }
    parts.push_back(std::move(part));
  }
}

}  // namespace assay
