// Trade words and what they mean, told to a newcomer once.
#ifndef ASSAY_EXPLAIN_GLOSSARY_H_
#define ASSAY_EXPLAIN_GLOSSARY_H_

#include <string>
#include <string_view>
#include <vector>

namespace assay {

struct TradeWord {
  std::vector<std::string_view> forms;  // "*" at the end: any ending
  std::string_view meaning;             // a sentence
};

// From the template of a "glossary." row: forms parted by "/", a tab, the
// meaning.
TradeWord ReadTradeWord(std::string_view row);

// Where the word, in one of its forms, begins in the text; npos where it does
// not come up. Whole words only: "half-open" is one.
std::size_t FindTradeWord(std::string_view text, const TradeWord& word);

// Goes with a reader through texts in their order.
class Glossary {
 public:
  explicit Glossary(const std::vector<TradeWord>& words)
      : words_(words), told_(words.size(), false) {}

  // Adds to the text what those of its trade words mean that come up for the
  // first time, in the order in which they come up.
  void Explain(std::string& text);

 private:
  const std::vector<TradeWord>& words_;
  std::vector<bool> told_;
};

}  // namespace assay

#endif  // ASSAY_EXPLAIN_GLOSSARY_H_
