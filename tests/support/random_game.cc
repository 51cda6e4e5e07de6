// std::mt19937_64 is the same everywhere, the standard distributions are not:
// numbers are taken by remainder.
#include "tests/support/random_game.h"

#include <random>
#include <string>

#include "assay/notation/fen.h"
#include "assay/notation/pgn_marks.h"
#include "assay/rules/movegen.h"

namespace assay::testing_support {
namespace {

constexpr int kDeepest = 4;

// Words that a reader may stumble over; the last row is Latin-1.
constexpr std::string_view kPlainWords[] = {
    "White",  "stands", "better", "because", "of",     "the",   "d5",
    "square", "12.",    "Nf3",    "e4",      "1-0",    "(see",  "later)",
    "\"so\"", "$14",    "!?",     "a;b",     "longer", "times:"};
constexpr std::string_view kOddWords[] = {
    "{",  "%",  "%x", "[%clk", "0:01:02]", "[Event",   "back\\",
    "\t", "  ", "\n", "\r\n",  "\n%",      "\xC3\xA9", "\xE2\x99\x98",
    "*",  "[",  "]",  "<>"};
constexpr std::string_view kLatin1Words[] = {"caf\xE9", "\xC3", "\xE2\x99",
                                             "\xA0",
                                             "R\xFC"
                                             "ckzug"};

class Generator {
 public:
  Generator(std::uint64_t seed, bool plain)
      : random_(seed), plain_(plain), latin1_(!plain && OneIn(5)) {}

  GameTree Game() {
    if (plain_ || !OneIn(4)) Tags();
    if (!tree_.tags.empty() && OneIn(3)) SetUp();
    GrowLine(0, tree_.start, 0, static_cast<int>(Below(80)));
    tree_.result = static_cast<GameResult>(Below(4));
    if (tree_.Tag("Result") != nullptr) {
      tree_.SetTag("Result", ToString(tree_.result));
    }
    if (!plain_) Surroundings();
    FindEncoding();
    return tree_;
  }

 private:
  std::uint64_t Below(std::uint64_t limit) { return random_() % limit; }
  bool OneIn(std::uint64_t count) { return Below(count) == 0; }

  std::string Word() {
    if (!plain_ && OneIn(6)) {
      return std::string(kOddWords[Below(std::size(kOddWords))]);
    }
    if (latin1_ && OneIn(6)) {
      return std::string(kLatin1Words[Below(std::size(kLatin1Words))]);
    }
    return std::string(kPlainWords[Below(std::size(kPlainWords))]);
  }

  std::string Text(std::uint64_t words) {
    std::string text;
    for (std::uint64_t i = 0; i < words; ++i) {
      if (i > 0) text += ' ';
      text += Word();
    }
    return text;
  }

  PgnComment Comment(std::uint32_t after_variations) {
    PgnComment comment;
    comment.text = Text((plain_ ? 1 : 0) + Below(25));
    comment.after_variations = after_variations;
    if (!plain_ && OneIn(4)) {
      comment.kind = PgnComment::Kind::kToLineEnd;
      std::string line;
      for (const char c : comment.text) {
        if (c != '\n' && c != '\r') line += c;
      }
      if (OneIn(3)) line += " } {";
      comment.text = line;
    }
    return comment;
  }

  void Tags() {
    for (const char* name :
         {"Event", "Site", "Date", "Round", "White", "Black", "Result"}) {
      if (!plain_ && OneIn(6)) continue;
      std::string value;
      for (const char c : Text(Below(4))) {
        if (c != '\n' && c != '\r' && !(plain_ && c == '"')) value += c;
      }
      if (!plain_ && OneIn(8)) value += "\\ \" \\\"";
      tree_.tags.push_back({name, value});
    }
    if (OneIn(2)) tree_.tags.push_back({"Annotator", "A. Writer"});
    if (OneIn(2)) tree_.tags.push_back({"ECO", "C00"});
  }

  void SetUp() {
    Position position = Position::Initial();
    const std::uint64_t plies = Below(60);
    for (std::uint64_t i = 0; i < plies; ++i) {
      MoveList moves;
      LegalMoves(position, moves);
      if (moves.empty()) break;
      position.Make(moves[Below(moves.size())]);
    }
    tree_.start = position;
    tree_.tags.push_back({"SetUp", "1"});
    tree_.tags.push_back({"FEN", ToFen(position)});
  }

  void Annotate(NodeIndex node) {
    const bool start = tree_.nodes[node].starts_line;
    while (OneIn(6) && !(plain_ && start)) {
      tree_.nodes[node].nags.push_back(
          static_cast<std::uint8_t>(plain_ ? 1 + Below(139) : Below(256)));
    }
    Comments(node, 0);
  }

  void Comments(NodeIndex node, std::uint32_t after_variations) {
    std::uint64_t rare = plain_ ? 12 : 6;
    while (OneIn(rare)) {
      tree_.nodes[node].comments.push_back(Comment(after_variations));
      if (plain_) return;
    }
  }

  void GrowLine(NodeIndex last, Position position, int depth, int length) {
    Annotate(last);
    for (int i = 0; i < length; ++i) {
      MoveList moves;
      LegalMoves(position, moves);
      const bool pass = !plain_ && !position.InCheck() && OneIn(30);
      if (moves.empty() && !pass) return;
      const Position before = position;
      const Move move = pass ? Move() : moves[Below(moves.size())];
      position = position.AfterStep(move);
      last = tree_.Append(last, move);
      Annotate(last);
      std::uint32_t variations = 0;
      while (depth < kDeepest && OneIn(9)) {
        const int fewest = plain_ ? 1 : 0;
        GrowLine(tree_.AddVariation(last), before, depth + 1,
                 fewest + static_cast<int>(Below(6)));
        ++variations;
        if (!plain_) Comments(last, variations);
      }
    }
  }

  void Surroundings() {
    if (!tree_.tags.empty() && OneIn(8)) tree_.heading.push_back(Comment(0));
    while (OneIn(8)) {
      PgnComment comment = Comment(0);
      if (comment.kind != PgnComment::Kind::kBraces) break;
      tree_.closing.push_back(comment);
    }
  }

  // As a reader finds it.
  void FindEncoding() {
    bool utf8 = true;
    const auto look = [&utf8](const std::vector<PgnComment>& comments) {
      for (const PgnComment& c : comments) utf8 = utf8 && IsUtf8(c.text);
    };
    look(tree_.heading);
    look(tree_.closing);
    for (const PgnTag& tag : tree_.tags) utf8 = utf8 && IsUtf8(tag.value);
    for (const GameNode& node : tree_.nodes) look(node.comments);
    tree_.encoding = utf8 ? PgnEncoding::kUtf8 : PgnEncoding::kLatin1;
  }

  std::mt19937_64 random_;
  bool plain_;
  bool latin1_;
  GameTree tree_;
};

}  // namespace

GameTree RandomGame(std::uint64_t seed) {
  return Generator(seed, /*plain=*/false).Game();
}

GameTree PlainRandomGame(std::uint64_t seed) {
  return Generator(seed, /*plain=*/true).Game();
}

}  // namespace assay::testing_support
