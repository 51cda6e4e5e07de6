#include "assay/notation/pgn_reader.h"

#include <utility>

#include "assay/base/problem_status.h"
#include "assay/notation/pgn_game_builder.h"

namespace assay {
namespace {

// A file of two-byte characters: there is no game to be found in it.
bool BeginsUtf16(const PgnToken& token) {
  return token.offset == 0 && token.text.size() >= 2 &&
         (token.text.substr(0, 2) == "\xFF\xFE" ||
          token.text.substr(0, 2) == "\xFE\xFF");
}

}  // namespace

std::string ToString(const PgnPlace& place) {
  return "game " + std::to_string(place.game) + ", line " +
         std::to_string(place.line) + ", column " +
         std::to_string(place.column);
}

absl::Status PgnItem::status() const {
  std::vector<Problem> problems;
  for (const PgnFault& fault : faults) {
    problems.push_back(fault.problem);
    problems.back().field =
        ToString(fault.place) + ": " + problems.back().field;
  }
  return ProblemsStatus(problems);
}

PgnReader::PgnReader(PgnSource source)
    : scanner_(PgnInput(std::move(source))) {}

PgnReader::PgnReader(std::string_view text) : scanner_(PgnInput(text)) {}

std::optional<PgnItem> PgnReader::Next() {
  if (ended_ || !scanner_.StartGame()) return std::nullopt;
  std::optional<PgnItem> item(std::in_place);
  PgnGameBuilder builder(*item, scanner_.game());
  PgnToken token;
  while (scanner_.Next(token)) {
    if (BeginsUtf16(token)) {
      ended_ = true;
      item->place = {1, 1, 1};
      item->faults.push_back(
          {item->place,
           {"encoding", "UTF-16", Quoted(token.text), "UTF-8 or Latin-1"},
           0});
      return item;
    }
    builder.Add(token, scanner_.lexer());
  }
  builder.Finish();
  return item;
}

}  // namespace assay
