#include "assay/explain/words.h"

#include "assay/facts/pawns.h"

namespace assay {

std::string Join(const std::vector<std::string>& items) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? " and " : ", ";
    text += items[i];
  }
  return text;
}

std::string NumberText(int number) {
  constexpr const char* kWords[] = {"no",    "one",  "two", "three",
                                    "four",  "five", "six", "seven",
                                    "eight", "nine", "ten"};
  if (number >= 0 && number <= 10) return kWords[number];
  return std::to_string(number);
}

std::string CountText(int count, PieceKind kind) {
  const std::string name = Name(kind);
  return count == 1 ? "a " + name : NumberText(count) + " " + name + "s";
}

std::string NamedMove(Side side, const std::string& san) {
  return side == Side::kWhite ? san : "..." + san;
}

std::string BreakText(const Claim& lever_move) {
  return NamedMove(lever_move.side, ToString(lever_move.squares[1]));
}

std::string Capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  return text;
}

}  // namespace assay
