#include "assay/notation/pgn_skimmer.h"

#include <utility>

#include "assay/notation/pgn_limits.h"

namespace assay {
namespace {

using Kind = PgnToken::Kind;

void AddMove(SkimmedGame& game, std::string_view text) {
  if (++game.move_count > kMostPgnNodes) return;
  game.moves += ' ';
  game.moves += text;
}

void Reset(SkimmedGame& game) {
  game.moves.clear();
  game.result = GameResult::kUnknown;
  game.terminated = false;
  game.move_count = 0;
  game.variation_count = 0;
  game.comment_count = 0;
  game.nag_count = 0;
  game.place = {};
}

}  // namespace

const std::string* SkimmedGame::Tag(std::string_view name) const {
  for (const PgnTag& tag : tags) {
    if (tag.name == name) return &tag.value;
  }
  return nullptr;
}

PgnSkimmer::PgnSkimmer(PgnSource source)
    : scanner_(PgnInput(std::move(source))) {}

PgnSkimmer::PgnSkimmer(std::string_view text) : scanner_(PgnInput(text)) {}

bool PgnSkimmer::Next(SkimmedGame& game) {
  Reset(game);
  std::size_t tags = 0;
  std::size_t depth = 0;
  PgnToken token;
  if (scanner_.StartGame()) {
    while (scanner_.Next(token)) {
      if (game.place.line == 0) {
        game.place = {scanner_.game(), token.line, token.column};
        game.offset = token.offset;
      }
      switch (token.kind) {
        case Kind::kTag:
          if (tags == kMostPgnTags) break;
          if (tags == game.tags.size()) game.tags.emplace_back();
          game.tags[tags].name = token.text;
          game.tags[tags].value = scanner_.lexer().tag_value();
          ++tags;
          break;
        case Kind::kSymbol:
          if (depth == 0) AddMove(game, token.text);
          break;
        case Kind::kOpen:
          ++depth;
          ++game.variation_count;
          break;
        case Kind::kClose:
          if (depth > 0) --depth;
          break;
        case Kind::kNag:
        case Kind::kMark:
        case Kind::kSign:
          ++game.nag_count;
          break;
        case Kind::kComment:
          ++game.comment_count;
          break;
        case Kind::kResult:
          game.terminated = true;
          game.result = ParseGameResult(token.text).value_or(GameResult::kDraw);
          break;
        default:
          break;
      }
    }
  }
  game.tags.resize(tags);
  return game.place.line > 0;
}

}  // namespace assay
