#include "assay/explain/glossary.h"

#include <algorithm>

#include "assay/explain/template.h"

namespace assay {
namespace {

// Letters beyond ASCII are bytes above it in UTF-8.
bool IsOfWord(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte >= 0x80 || c == '-' || (c >= '0' && c <= '9') ||
         (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

char Lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::size_t FindForm(std::string_view text, std::string_view form) {
  const bool open_ended = form.back() == '*';
  if (open_ended) form.remove_suffix(1);
  const auto same = [](char a, char b) { return Lower(a) == Lower(b); };
  for (auto from = text.begin();; ++from) {
    const auto at =
        std::search(from, text.end(), form.begin(), form.end(), same);
    if (at == text.end()) return std::string_view::npos;
    const auto end = at + static_cast<std::ptrdiff_t>(form.size());
    const bool begins =
        at == text.begin() || !IsOfWord(at[-1]) || !IsOfWord(form.front());
    const bool ends = open_ended || end == text.end() || !IsOfWord(*end);
    // A sentence may begin with it; a capital further on makes it a name: the
    // Exchange French is no exchange.
    const bool is_name = !std::equal(at + 1, end, form.begin() + 1);
    if (begins && ends && !is_name)
      return static_cast<std::size_t>(at - text.begin());
    from = at;
  }
}

}  // namespace

TradeWord ReadTradeWord(std::string_view row) {
  TradeWord word;
  std::string_view forms = Cut(row, '\t');
  while (!forms.empty()) word.forms.push_back(Cut(forms, '/'));
  word.meaning = row;
  return word;
}

std::size_t FindTradeWord(std::string_view text, const TradeWord& word) {
  std::size_t first = std::string_view::npos;
  for (const std::string_view form : word.forms) {
    first = std::min(first, FindForm(text, form));
  }
  return first;
}

void Glossary::Explain(std::string& text) {
  struct Found {
    std::size_t at;
    std::size_t word;
  };
  std::vector<Found> found;
  for (std::size_t i = 0; i < words_.size(); ++i) {
    if (told_[i]) continue;
    const std::size_t at = FindTradeWord(text, words_[i]);
    if (at == std::string_view::npos) continue;
    told_[i] = true;
    found.push_back({at, i});
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Found& a, const Found& b) { return a.at < b.at; });
  for (const Found& one : found) {
    text += ' ';
    text += words_[one.word].meaning;
  }
}

}  // namespace assay
