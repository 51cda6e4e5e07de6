// The export format, rule by rule, and what cannot be written.
#include "assay/notation/pgn_writer.h"

#include <gtest/gtest.h>

#include <string>

#include "assay/base/problem_status.h"
#include "assay/notation/fen.h"
#include "assay/notation/pgn_limits.h"
#include "assay/notation/pgn_reader.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

using testing_support::FromFen;
using testing_support::MoveOf;

GameTree ReadOne(std::string_view text) {
  PgnReader reader(text);
  std::optional<PgnItem> item = reader.Next();
  EXPECT_TRUE(item.has_value() && item->ok()) << text;
  return item.has_value() ? std::move(item->tree) : GameTree();
}

std::string Export(std::string_view text) {
  return WritePgn(ReadOne(text), PgnLayout::kExport).value_or("error");
}

std::string Author(std::string_view text) {
  return WritePgn(ReadOne(text), PgnLayout::kAuthor).value_or("error");
}

// The movetext alone.
std::string Moves(std::string_view text) {
  const std::string all = Export(text);
  const std::size_t at = all.find("\n\n");
  return all.substr(at + 2, all.size() - at - 4);
}

// PGN standard of 1994, 8.1.1 and 3.2: the roster in order, one empty line
// after the tags and one after the movetext.
TEST(PgnWriter, RosterInOrderWithDefaults) {
  EXPECT_EQ(Export("1. e4 1-0"),
            "[Event \"?\"]\n[Site \"?\"]\n[Date \"????.??.??\"]\n"
            "[Round \"?\"]\n[White \"?\"]\n[Black \"?\"]\n[Result \"1-0\"]\n"
            "\n1. e4 1-0\n\n");
}

TEST(PgnWriter, OtherTagsInAsciiOrderAndOnce) {
  EXPECT_EQ(Export("[WhiteElo \"1\"]\n[Black \"B\"]\n[ECO \"C20\"]\n"
                   "[Result \"0-1\"]\n[Event \"E \\\"\\\\\"]\n[ECO \"X\"]\n"
                   "[eco \"y\"]\n1. e4 1-0"),
            "[Event \"E \\\"\\\\\"]\n[Site \"?\"]\n[Date \"????.??.??\"]\n"
            "[Round \"?\"]\n[White \"?\"]\n[Black \"B\"]\n[Result \"1-0\"]\n"
            "[ECO \"C20\"]\n[WhiteElo \"1\"]\n[eco \"y\"]\n\n1. e4 1-0\n\n");
}

// 8.2.2.2: White's moves are numbered, Black's after what comes between.
TEST(PgnWriter, MoveNumbers) {
  EXPECT_EQ(Moves("e4 e5 Nf3 Nc6 *"), "1. e4 e5 2. Nf3 Nc6 *");
  EXPECT_EQ(Moves("e4 {x} e5 {y} Nf3 *"), "1. e4 {x} 1... e5 {y} 2. Nf3 *");
  EXPECT_EQ(Moves("e4 (d4 d5 (f5) c4) e5 *"),
            "1. e4 (1. d4 d5 (1... f5) 2. c4) 1... e5 *");
  EXPECT_EQ(Moves("e4 ; x\ne5 *"), "1. e4 { x} 1... e5 *");
  EXPECT_EQ(Moves("e4! e5?! *"), "1. e4 $1 e5 $6 *");
}

TEST(PgnWriter, BlackBegins) {
  const std::string text = Export(
      "[FEN \"4k3/8/8/4K3/4P3/8/8/8 b - - 3 40\"]\n[SetUp \"1\"]\n"
      "Kd7 Kf6 Kd6 *");
  EXPECT_NE(text.find("[FEN \"4k3/8/8/4K3/4P3/8/8/8 b - - 3 40\"]\n"
                      "[SetUp \"1\"]\n\n40... Kd7 41. Kf6 Kd6 *\n"),
            std::string::npos)
      << text;
}

TEST(PgnWriter, StartPositionOfATreeMadeByHand) {
  GameTree tree;
  tree.start = FromFen("4k3/8/8/4K3/4P3/8/8/8 w - - 0 1");
  tree.Append(0, MoveOf(tree.start, "Kd6"));
  for (const PgnLayout layout : {PgnLayout::kExport, PgnLayout::kAuthor}) {
    const GameTree read = ReadOne(*WritePgn(tree, layout));
    EXPECT_EQ(read.start, tree.start);
    EXPECT_EQ(read.nodes[1].move, tree.nodes[1].move);
  }
}

// PGN standard of 1994, 8.2.3.4: its own example, a pinned knight is no rival.
TEST(PgnWriter, SanOfTheStandardsExample) {
  GameTree tree;
  tree.start = FromFen("4k3/8/8/8/1b6/2N5/8/4K1N1 w - - 0 1");
  tree.Append(0, MoveOf(tree.start, "g1e2"));
  EXPECT_NE(WritePgn(tree, PgnLayout::kExport)->find("1. Ne2 *"),
            std::string::npos);
}

// 8.2.1: less than 80 characters, as many tokens on a line as it takes.
TEST(PgnWriter, LinesAreFilled) {
  std::string moves;
  for (int i = 0; i < 20; ++i) moves += "Nf3 Nf6 Ng1 Ng8 ";
  EXPECT_EQ(
      Moves(moves + "*").substr(0, 158),
      "1. Nf3 Nf6 2. Ng1 Ng8 3. Nf3 Nf6 4. Ng1 Ng8 5. Nf3 Nf6 6. Ng1 Ng8 7. "
      "Nf3 Nf6 8.\nNg1 Ng8 9. Nf3 Nf6 10. Ng1 Ng8 11. Nf3 Nf6 12. Ng1 Ng8 13. "
      "Nf3 Nf6 14. Ng1 Ng8");
}

TEST(PgnWriter, CommentsAreFilledInExportFormat) {
  std::string comment;
  for (int i = 0; i < 12; ++i) comment += "word" + std::to_string(i) + "  \n";
  EXPECT_EQ(Moves("1. e4 {" + comment + "} *"),
            "1. e4 {word0 word1 word2 word3 word4 word5 word6 word7 word8 "
            "word9 word10\nword11 } *");
  // What a line may not begin with stays where it is.
  const std::string filler(70, 'x');
  EXPECT_EQ(Moves("1. e4 {" + filler + " %not an escape} *"),
            "1. e4\n{" + filler + " %not an\nescape} *");
  EXPECT_EQ(Moves("1. e4 {" + filler + " [Event no tag} *"),
            "1. e4\n{" + filler + " [Event\nno tag} *");
}

TEST(PgnWriter, WidthCountsCharactersNotBytes) {
  std::string wide;
  for (int i = 0; i < 70; ++i) wide += "\xC3\xA9";
  EXPECT_EQ(Moves("1. e4 {" + wide + "} *"), "1. e4 {" + wide + "}\n*");
}

TEST(PgnWriter, LineCommentsBecomeBracesUnlessTheyHaveOne) {
  EXPECT_EQ(Moves("1. e4 ;a b\n*"), "1. e4 {a b} *");
  EXPECT_EQ(Moves("1. e4 ;a } b\ne5 *"), "1. e4 ;a } b\n1... e5 *");
  EXPECT_EQ(Moves("1. e4 (1. d4 ;a } b\n) 1... e5 *"),
            "1. e4 (1. d4 ;a } b\n) 1... e5 *");
}

TEST(PgnWriter, AuthorLayoutKeepsCommentsAndTags) {
  const std::string text =
      "[Black \"B\"]\n[Event \"E\"]\n\n1. e4 { two  spaces\r\n%and \tmore } "
      "1... e5 ;line  end \n2. Nf3 {} (2. Nc3) {after} 2... Nc6 *\n\n";
  EXPECT_EQ(Author(text), text);
}

TEST(PgnWriter, VariationsWithoutMoves) {
  EXPECT_EQ(Moves("1. e4 () ({see} ) (;x }\n) e5 *"),
            "1. e4 () ({see}) (;x }\n) 1... e5 *");
}

TEST(PgnWriter, ClosingCommentsStayOnTheTerminatorsLine) {
  EXPECT_EQ(Moves("1. e4 1-0 {the end} {of it}"),
            "1. e4 1-0 {the end} {of it}");
  const std::string two = Export("1. e4 1-0 {a}") + Export("1. d4 *");
  PgnReader reader{std::string_view(two)};
  EXPECT_EQ(reader.Next()->tree.closing.size(), 1U);
  EXPECT_TRUE(reader.Next()->tree.heading.empty());
}

TEST(PgnWriter, MakeCommentTakesAnyText) {
  EXPECT_EQ(MakeComment("a {b} c").text, "a (b) c");
}

struct Row {
  const char* name;
  void (*spoil)(GameTree& tree);
  const char* field;
  const char* reason;
};

class PgnWriterFaults : public ::testing::TestWithParam<Row> {};

TEST_P(PgnWriterFaults, AreRefused) {
  GameTree tree = ReadOne("[Event \"A\"]\n\n1. e4 {x} (1. d4 ;y\n) e5 *");
  ASSERT_TRUE(WritePgn(tree, PgnLayout::kExport).ok());
  GetParam().spoil(tree);
  for (const PgnLayout layout : {PgnLayout::kExport, PgnLayout::kAuthor}) {
    const auto text = WritePgn(tree, layout);
    ASSERT_FALSE(text.ok());
    const std::vector<Problem> problems = ProblemsOf(text.status());
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].field, GetParam().field);
    EXPECT_EQ(problems[0].reason, GetParam().reason);
  }
}

INSTANTIATE_TEST_SUITE_P(
    Table, PgnWriterFaults,
    ::testing::Values(
        Row{"TagName", [](GameTree& game) { game.tags[0].name = "a b"; }, "tag",
            "bad name"},
        Row{"TagNameEmpty", [](GameTree& game) { game.tags[0].name = ""; },
            "tag", "bad name"},
        Row{"TagLineEnd", [](GameTree& game) { game.tags[0].value = "a\nb"; },
            "tag", "line end in value"},
        Row{"TagTooLong",
            [](GameTree& game) {
              game.tags[0].value = std::string(kMostPgnTagValueBytes, '"');
            },
            "tag", "value too long"},
        Row{"TagsTooMany",
            [](GameTree& game) { game.tags.resize(257, game.tags[0]); }, "tag",
            "too many"},
        Row{"CommentBrace",
            [](GameTree& game) { game.nodes[1].comments[0].text = "a}b"; },
            "comment", "right brace"},
        Row{"CommentLineEnd",
            [](GameTree& game) { game.nodes[3].comments[0].text = "a\rb"; },
            "comment", "line end"},
        Row{"CommentTooLong",
            [](GameTree& game) {
              game.closing.push_back(
                  MakeComment(std::string(kMostPgnCommentBytes + 1, 'x')));
            },
            "comment", "too long"},
        Row{"NagsTooMany",
            [](GameTree& game) { game.nodes[1].nags.resize(65, 1); }, "nag",
            "too many"},
        Row{"TooDeep",
            [](GameTree& game) {
              NodeIndex node = 1;
              for (std::size_t i = 0; i <= kMostPgnDepth; ++i) {
                node = game.Append(game.AddVariation(node), game.nodes[1].move);
              }
            },
            "variation", "nested too deep"},
        Row{"TooManyMoves",
            [](GameTree& game) {
              NodeIndex last = game.MainLine().back();
              while (game.nodes.size() <= kMostPgnNodes) {
                last = game.Append(last, Move());
              }
            },
            "move", "too many"}),
    [](const ::testing::TestParamInfo<Row>& row) { return row.param.name; });

void PrintTo(const Row& row, std::ostream* out) { *out << row.name; }

}  // namespace
}  // namespace assay
