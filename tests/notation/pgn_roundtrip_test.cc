// Read, write, read gives the same tree: on 2,000 random games, in both
// layouts, from sources that give a few bytes at a time.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "assay/notation/fen.h"
#include "assay/notation/pgn_reader.h"
#include "assay/notation/pgn_skimmer.h"
#include "assay/notation/pgn_writer.h"
#include "assay/notation/san.h"
#include "tests/support/random_game.h"

namespace assay {
namespace {

using testing_support::PlainRandomGame;
using testing_support::RandomGame;

constexpr std::uint64_t kGames = 2000;

// Hands the text out in pieces of changing sizes.
PgnSource InPieces(const std::string& text) {
  return [&text, at = std::size_t{0}, piece = std::size_t{1}](
             char* to, std::size_t size) mutable {
    piece = piece * 7 % 4099 + 1;
    const std::size_t count = std::min({piece, size, text.size() - at});
    std::copy_n(text.data() + at, count, to);
    at += count;
    return count;
  };
}

std::string Write(const GameTree& tree, PgnLayout layout) {
  const absl::StatusOr<std::string> text = WritePgn(tree, layout);
  EXPECT_TRUE(text.ok()) << text.status().message();
  return text.ok() ? *text : "";
}

GameTree ReadOne(const std::string& text) {
  PgnReader reader{std::string_view(text)};
  std::optional<PgnItem> item = reader.Next();
  EXPECT_TRUE(item.has_value()) << text;
  if (!item.has_value()) return {};
  EXPECT_TRUE(item->ok()) << item->status().message() << '\n' << text;
  EXPECT_FALSE(reader.Next().has_value()) << text;
  return std::move(item->tree);
}

// What export format may change: white space in comments, their kind.
void Normalise(std::vector<PgnComment>& comments) {
  for (PgnComment& comment : comments) {
    std::string text;
    for (const char c : comment.text) {
      const bool space = IsPgnSpace(c);
      if (!space) text += c;
      if (space && !text.empty() && text.back() != ' ') text += ' ';
    }
    while (!text.empty() && text.back() == ' ') text.pop_back();
    comment.text = text;
    comment.kind = PgnComment::Kind::kBraces;
  }
}

GameTree Normalised(GameTree tree) {
  Normalise(tree.heading);
  Normalise(tree.closing);
  for (GameNode& node : tree.nodes) Normalise(node.comments);
  tree.tags.clear();
  return tree;
}

TEST(PgnRoundtrip, AuthorLayoutGivesTheSameTreesInOneFile) {
  std::string file;
  for (std::uint64_t seed = 0; seed < kGames; ++seed) {
    file += Write(RandomGame(seed), PgnLayout::kAuthor);
  }
  PgnReader reader(InPieces(file));
  for (std::uint64_t seed = 0; seed < kGames; ++seed) {
    const std::optional<PgnItem> item = reader.Next();
    ASSERT_TRUE(item.has_value()) << seed;
    ASSERT_TRUE(item->ok()) << seed << ": " << item->status().message();
    const GameTree game = RandomGame(seed);
    ASSERT_EQ(item->tree.nodes.size(), game.nodes.size()) << seed;
    ASSERT_TRUE(item->tree == game)
        << seed << '\n'
        << Write(game, PgnLayout::kAuthor) << "read as\n"
        << Write(item->tree, PgnLayout::kAuthor);
  }
  EXPECT_FALSE(reader.Next().has_value());
}

TEST(PgnRoundtrip, ExportIsAFixedPointAndKeepsTheTree) {
  for (std::uint64_t seed = 0; seed < kGames; ++seed) {
    const GameTree game = RandomGame(seed);
    const std::string text = Write(game, PgnLayout::kExport);
    const GameTree read = ReadOne(text);
    ASSERT_TRUE(Normalised(read) == Normalised(game)) << seed << '\n' << text;
    ASSERT_EQ(Write(read, PgnLayout::kExport), text) << seed;
  }
}

TEST(PgnRoundtrip, ExportLinesHaveLessThan80Characters) {
  for (std::uint64_t seed = 0; seed < kGames; ++seed) {
    const std::string text = Write(PlainRandomGame(seed), PgnLayout::kExport);
    std::size_t at = 0;
    while (at < text.size()) {
      const std::size_t end = text.find('\n', at);
      ASSERT_NE(end, std::string::npos) << seed;
      const std::string line = text.substr(at, end - at);
      if (line.empty() || line[0] != '[') {
        ASSERT_LT(line.size(), 80U) << line;
        ASSERT_TRUE(line.empty() || (line.front() != ' ' && line.back() != ' '))
            << line;
      }
      at = end + 1;
    }
  }
}

TEST(PgnRoundtrip, TheSkimmerSeesTheSameGames) {
  std::string file;
  for (std::uint64_t seed = 0; seed < kGames; ++seed) {
    file += Write(RandomGame(seed), PgnLayout::kAuthor);
  }
  PgnSkimmer skimmer(InPieces(file));
  SkimmedGame game;
  for (std::uint64_t seed = 0; seed < kGames; ++seed) {
    const GameTree tree = RandomGame(seed);
    ASSERT_TRUE(skimmer.Next(game)) << seed;
    std::string moves;
    for (const std::string& san :
         ToSan(tree.start, tree.MovesTo(tree.MainLine().empty()
                                            ? 0
                                            : tree.MainLine().back()))) {
      moves += ' ' + san;
    }
    ASSERT_EQ(game.moves, moves) << seed;
    ASSERT_EQ(game.tags, tree.tags) << seed;
    ASSERT_EQ(game.result, tree.result) << seed;
    ASSERT_TRUE(game.terminated);
  }
  EXPECT_FALSE(skimmer.Next(game));
}

// A walk plays every node's move from the position that the tree gives.
TEST(PgnRoundtrip, WalkVisitsEveryNodeWithItsPosition) {
  for (std::uint64_t seed = 0; seed < 100; ++seed) {
    const GameTree tree = RandomGame(seed);
    std::vector<NodeIndex> order;
    WalkTree(tree, [&](const TreeStep& step) {
      order.push_back(step.index);
      ASSERT_EQ(step.after, tree.PositionAfter(step.index));
      ASSERT_EQ(static_cast<std::size_t>(step.ply),
                tree.MovesTo(step.index).size());
    });
    // RandomGame numbers nodes in the order of the text.
    ASSERT_EQ(order.size(), tree.nodes.size());
    ASSERT_TRUE(std::is_sorted(order.begin(), order.end()));
  }
}

}  // namespace
}  // namespace assay
