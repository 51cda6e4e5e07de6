// A stack of open lines stands for recursion: "(" pushes the position before
// the latest move, ")" goes back to the line it left.
#include "assay/notation/pgn_game_builder.h"

#include <optional>
#include <utility>

#include "assay/base/problem_status.h"
#include "assay/notation/fen.h"
#include "assay/notation/pgn_limits.h"
#include "assay/notation/pgn_marks.h"
#include "assay/notation/san.h"
#include "assay/notation/san_quick.h"

namespace assay {
namespace {

using Kind = PgnToken::Kind;

constexpr std::size_t kUsualNodes = 160;

std::string AtMost(std::size_t limit) {
  return "at most " + std::to_string(limit);
}

PgnPlace PlaceOf(const PgnToken& token, std::uint64_t game) {
  return {game, token.line, token.column};
}

// Just behind a token of the movetext.
std::uint64_t EndOf(const PgnToken& token) {
  std::uint64_t signs = 0;  // that are no part of its text
  if (token.kind == Kind::kNag) signs = 1;
  if (token.kind == Kind::kComment) {
    signs = token.comment_kind == PgnComment::Kind::kBraces ? 2 : 1;
  }
  return token.offset + signs + token.text.size();
}

// A comment is the last thing of the node's text so far.
void EndsWith(const PgnToken& comment, PgnExtent& extent) {
  extent.comments = EndOf(comment);
  const bool braces = comment.comment_kind == PgnComment::Kind::kBraces;
  extent.brace = braces ? extent.comments - 1 : 0;
}

}  // namespace

PgnGameBuilder::PgnGameBuilder(PgnItem& item, std::uint64_t game)
    : item_(item), tree_(item.tree), game_(game) {
  item_.place.game = game;
  tree_.nodes.reserve(kUsualNodes);
  item_.extents.reserve(kUsualNodes);
  item_.extents.emplace_back();
  tree_.tags.reserve(16);
  lines_.push_back({0, tree_.start, tree_.start, {}});
}

void PgnGameBuilder::Fault(const PgnToken& token, Problem problem) {
  if (item_.faults.size() >= kMostPgnFaults) return;
  item_.faults.push_back(
      {PlaceOf(token, game_), std::move(problem), lines_.back().last});
}

void PgnGameBuilder::FaultAndStop(const PgnToken& token, Problem problem) {
  Fault(token, std::move(problem));
  stopped_ = true;
}

void PgnGameBuilder::Remark(const PgnToken& token, Problem problem) {
  if (tree_.remarks.size() >= kMostPgnRemarks) return;
  problem.field = ToString(PlaceOf(token, game_)) + ": " + problem.field;
  tree_.remarks.push_back(std::move(problem));
}

void PgnGameBuilder::Add(const PgnToken& token, const PgnLexer& lexer) {
  if (item_.place.line == 0) item_.place = PlaceOf(token, game_);
  last_token_ = token;
  last_token_.text = {};
  switch (token.kind) {
    case Kind::kTag:
      return AddTag(token, lexer);
    case Kind::kBadTag:
      return Fault(token, lexer.problem());
    case Kind::kBadComment:
      if (stopped_) return;
      return begun_ ? FaultAndStop(token, lexer.problem())
                    : Fault(token, lexer.problem());
    case Kind::kComment:
      if (terminated_) return AddComment(token, tree_.closing, 0);
      if (stopped_) return;
      if (!begun_ && tree_.tags.empty()) {
        EndsWith(token, last_extent());
        return AddComment(token, tree_.heading, 0);
      }
      if (last_node().variations.empty()) EndsWith(token, last_extent());
      return AddComment(
          token, last_node().comments,
          static_cast<std::uint32_t>(last_node().variations.size()));
    default:
      if (!begun_) BeginMovetext(token);
      return AddMovetext(token);
  }
}

void PgnGameBuilder::AddTag(const PgnToken& token, const PgnLexer& lexer) {
  if (tree_.tags.size() >= kMostPgnTags) {
    if (tree_.tags.size() == tag_places_.size()) {
      tag_places_.push_back(token);  // told once
      Fault(token, {"tag", "too many", Quoted(token.text),
                    AtMost(kMostPgnTags) + " tags"});
    }
    return;
  }
  if (tree_.Tag(token.text) != nullptr) {
    Remark(token, {"tag", "given twice", Quoted(token.text), "once"});
  }
  tree_.tags.push_back({std::string(token.text), lexer.tag_value()});
  tag_places_.push_back(token);
}

void PgnGameBuilder::BeginMovetext(const PgnToken& token) {
  begun_ = true;
  PgnExtent& start_extent = item_.extents.front();
  start_extent.marks = token.offset;
  if (start_extent.comments == 0) start_extent.comments = token.offset;
  if (tree_.tags.empty() && !tree_.heading.empty()) {
    // Without tags, what comes first is said of the game's beginning.
    tree_.nodes[0].comments = std::move(tree_.heading);
    tree_.heading.clear();
  }
  const auto place = [&](std::string_view name) -> const PgnToken& {
    for (std::size_t i = 0; i < tree_.tags.size(); ++i) {
      if (tree_.tags[i].name == name) return tag_places_[i];
    }
    return token;
  };
  const std::string* variant = tree_.Tag("Variant");
  if (variant != nullptr) {
    // Names that programs give the usual rules (common practice, no source).
    bool usual = false;
    for (const std::string_view name :
         {"", "?", "-", "chess", "Chess", "standard", "Standard", "normal",
          "Normal", "regular", "Regular", "From Position", "From position"}) {
      usual |= *variant == name;
    }
    if (!usual) {
      return FaultAndStop(
          place("Variant"),
          {"variant", "not supported", Quoted(*variant), "the rules of chess"});
    }
  }
  const std::string* set_up = tree_.Tag("SetUp");
  const std::string* fen = tree_.Tag("FEN");
  if (fen == nullptr) {
    if (set_up != nullptr && *set_up == "1") {
      FaultAndStop(place("SetUp"), {"setup", "no FEN", "no FEN tag",
                                    "a FEN tag beside SetUp 1"});
    }
    return;
  }
  const absl::StatusOr<Position> start = PositionFromFen(*fen);
  if (!start.ok()) {
    for (Problem& problem : ProblemsOf(start.status())) {
      FaultAndStop(place("FEN"), std::move(problem));
    }
    return;
  }
  if (set_up == nullptr || *set_up == "0") {
    Remark(
        place("FEN"),
        {"setup", set_up == nullptr ? "FEN without SetUp" : "FEN with SetUp 0",
         "", "SetUp 1"});
  }
  tree_.start = *start;
  lines_[0].before = *start;
  lines_[0].after = *start;
}

void PgnGameBuilder::AddMovetext(const PgnToken& token) {
  if (terminated_) {  // only ")" comes after a terminator
    if (!stopped_ && lines_.size() == 1) CloseVariation(token);
    return;
  }
  if (token.kind == Kind::kResult) return ReadResult(token);
  if (stopped_) return;
  switch (token.kind) {
    case Kind::kSymbol:
      return AddSymbol(token);
    case Kind::kNumber:
      return ReadNumber(token);
    case Kind::kNag:
      return ReadNag(token);
    case Kind::kMark:
      return ReadMark(token);
    case Kind::kSign:
      if (const std::optional<std::uint8_t> nag = NagOfSign(token.text)) {
        return AddNag(token, *nag);
      }
      return ReadJunk(token);
    case Kind::kOpen:
      return OpenVariation(token);
    case Kind::kClose:
      return CloseVariation(token);
    default:
      return ReadJunk(token);
  }
}

void PgnGameBuilder::AddComment(const PgnToken& token,
                                std::vector<PgnComment>& comments,
                                std::uint32_t after_variations) {
  ++comment_count_;
  comment_bytes_ += token.text.size();
  if (comment_count_ > kMostPgnComments) {
    return FaultAndStop(token, {"comment", "too many", Quoted(token.text),
                                AtMost(kMostPgnComments) + " in a game"});
  }
  if (comment_bytes_ > kMostPgnGameCommentBytes) {
    return FaultAndStop(
        token, {"comment", "too many bytes", std::to_string(comment_bytes_),
                AtMost(kMostPgnGameCommentBytes) + " in a game"});
  }
  comments.push_back(
      {std::string(token.text), token.comment_kind, after_variations});
}

void PgnGameBuilder::AddSymbol(const PgnToken& token) {
  Line& line = lines_.back();
  Move move = QuickSan(line.after, token.text);
  if (!move.is_null()) return AddMove(token, move);
  if (token.text == kPassText || token.text == "Z0") {
    if (line.after.InCheck()) {
      return FaultAndStop(token, {"move", "pass in check", Quoted(token.text),
                                  "a move out of check"});
    }
    return AddMove(token, Move());
  }
  if (const std::optional<std::uint8_t> nag = NagOfSign(token.text)) {
    return AddNag(token, *nag);
  }
  const absl::StatusOr<Move> read = ParseMove(line.after, token.text);
  if (read.ok()) return AddMove(token, *read);
  for (Problem& problem : ProblemsOf(read.status())) {
    FaultAndStop(token, std::move(problem));
  }
}

void PgnGameBuilder::AddMove(const PgnToken& token, Move move) {
  if (tree_.nodes.size() >= kMostPgnNodes) {
    return FaultAndStop(token, {"move", "too many", Quoted(token.text),
                                AtMost(kMostPgnNodes) + " in a game"});
  }
  Line& line = lines_.back();
  line.last = tree_.Append(line.last, move);
  item_.extents.push_back({EndOf(token), EndOf(token), 0});
  line.before = line.after;
  if (move.is_null()) {
    line.after = line.before.AfterPass();
  } else {
    line.after.Make(move);
  }
}

void PgnGameBuilder::AddNag(const PgnToken& token, std::uint8_t nag) {
  if (last_node().nags.size() >= kMostPgnNags) {
    return FaultAndStop(token, {"nag", "too many", std::to_string(nag),
                                AtMost(kMostPgnNags) + " of one move"});
  }
  last_node().nags.push_back(nag);
  if (last_node().variations.empty()) {
    PgnExtent& extent = last_extent();
    if (extent.comments == extent.marks) extent.marks = EndOf(token);
    extent.comments = EndOf(token);
  }
}

void PgnGameBuilder::ReadNag(const PgnToken& token) {
  if (token.text.empty()) {
    return FaultAndStop(
        token, {"nag", "no number", Quoted("$"), "digits after \"$\""});
  }
  int value = 0;
  for (const char c : token.text) {
    value = value * 10 + (c - '0');
    if (value > kMostPgnNag) {
      return FaultAndStop(
          token, {"nag", "over 255", Quoted('$' + std::string(token.text)),
                  "a number from 0 to 255"});
    }
  }
  AddNag(token, static_cast<std::uint8_t>(value));
}

void PgnGameBuilder::ReadMark(const PgnToken& token) {
  if (const std::optional<std::uint8_t> nag = NagOfMark(token.text)) {
    return AddNag(token, *nag);
  }
  FaultAndStop(token, {"mark", "not a suffix mark", Quoted(token.text),
                       "one of ! ? !! ?? !? ?!"});
}

void PgnGameBuilder::ReadNumber(const PgnToken& token) {
  if (number_told_) return;
  const int number = lines_.back().after.fullmove_number();
  int value = 0;
  for (const char c : token.text.substr(0, 7)) value = value * 10 + (c - '0');
  if (value == number) return;
  number_told_ = true;
  Remark(token, {"number", "does not fit", Quoted(token.text),
                 std::to_string(number)});
}

void PgnGameBuilder::ReadResult(const PgnToken& token) {
  terminated_ = true;
  if (token.text == "1/2") {
    Remark(token, {"result", "draw cut short", Quoted(token.text), "1/2-1/2"});
  }
  tree_.result = ParseGameResult(token.text).value_or(GameResult::kDraw);
}

void PgnGameBuilder::ReadJunk(const PgnToken& token) {
  const bool result = ParseGameResult(token.text).has_value();
  FaultAndStop(
      token,
      {"movetext", result ? "terminator in a variation" : "unexpected text",
       Quoted(token.text),
       result ? "\")\" before it"
              : "a move, NAG, comment, variation or terminator"});
}

void PgnGameBuilder::OpenVariation(const PgnToken& token) {
  const Line& line = lines_.back();
  if (tree_.nodes[line.last].starts_line) {
    return FaultAndStop(token, {"variation", "no move to replace", Quoted("("),
                                "a move before it"});
  }
  if (lines_.size() > kMostPgnDepth) {
    return FaultAndStop(token, {"variation", "nested too deep", Quoted("("),
                                AtMost(kMostPgnDepth) + " levels"});
  }
  if (tree_.nodes.size() >= kMostPgnNodes) {
    return FaultAndStop(token, {"move", "too many", Quoted("("),
                                AtMost(kMostPgnNodes) + " in a game"});
  }
  const Position before = line.before;
  const NodeIndex start = tree_.AddVariation(line.last);
  item_.extents.push_back({EndOf(token), EndOf(token), 0});
  lines_.push_back({start, before, before, token});
}

void PgnGameBuilder::CloseVariation(const PgnToken& token) {
  if (lines_.size() > 1) {
    lines_.pop_back();
    return;
  }
  FaultAndStop(token,
               {"variation", "not opened", Quoted(")"), "\"(\" before it"});
}

void PgnGameBuilder::FinishResult() {
  const std::string* tag = tree_.Tag("Result");
  std::optional<GameResult> told;
  if (tag != nullptr) {
    told = ParseGameResult(*tag);
    if (!told.has_value()) {
      Remark(last_token_, {"result", "tag is no result", Quoted(*tag),
                           "1-0, 0-1, 1/2-1/2 or *"});
    }
  }
  if (!terminated_) {
    tree_.result = told.value_or(GameResult::kUnknown);
    Remark(last_token_, {"result", "no terminator", "the game's end",
                         "1-0, 0-1, 1/2-1/2 or *"});
  } else if (tag != nullptr && told.has_value() && *told != tree_.result) {
    Remark(last_token_,
           {"result", "tag differs", Quoted(*tag),
            std::string(ToString(tree_.result)) + " as the terminator"});
  }
}

void PgnGameBuilder::FinishEncoding() {
  const auto whole = [](const std::vector<PgnComment>& comments) {
    for (const PgnComment& comment : comments) {
      if (!IsUtf8(comment.text)) return false;
    }
    return true;
  };
  bool utf8 = whole(tree_.heading) && whole(tree_.closing);
  for (const PgnTag& tag : tree_.tags) utf8 = utf8 && IsUtf8(tag.value);
  for (const GameNode& node : tree_.nodes) utf8 = utf8 && whole(node.comments);
  tree_.encoding = utf8 ? PgnEncoding::kUtf8 : PgnEncoding::kLatin1;
}

void PgnGameBuilder::Finish() {
  if (!begun_) BeginMovetext(last_token_);
  if (!stopped_ && lines_.size() > 1) {
    Fault(lines_.back().opened, {"variation", "not closed", Quoted("("),
                                 "\")\" before the game's end"});
  }
  FinishResult();
  FinishEncoding();
}

}  // namespace assay
