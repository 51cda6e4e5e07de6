// Our words in an author's text: put in, told apart, and taken out again.
#include "assay/lesson/own_comments.h"

#include <string>

#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace assay {
namespace {

// The text with words of ours after each move of every game.
std::string Annotated(const std::string& pgn, const std::string& words) {
  std::string text;
  std::uint64_t at = 0;
  PgnReader reader{std::string_view(pgn)};
  while (const std::optional<PgnItem> item = reader.Next()) {
    WalkTree(item->tree, [&](const TreeStep& step) {
      for (const Insertion& insertion :
           InsertionsAt(*item, step.index, 14, words, LineEndOf(pgn))) {
        EXPECT_GE(insertion.offset, at);
        text += pgn.substr(at, insertion.offset - at) + insertion.text;
        at = insertion.offset;
      }
    });
  }
  return text + pgn.substr(at);
}

struct Case {
  const char* name;
  const char* pgn;
};

class OwnCommentsTest : public ::testing::TestWithParam<Case> {};

TEST_P(OwnCommentsTest, ComeOutAgainToTheByte) {
  const std::string pgn = GetParam().pgn;
  const std::string annotated = Annotated(
      pgn,
      "White is better, with more space. Braces { } and a word so long "
      "that it has to go on to another line of the file.");
  EXPECT_NE(annotated, pgn);
  EXPECT_EQ(WithoutOurs(annotated), pgn);
}

TEST_P(OwnCommentsTest, LeaveTheAuthorsGameAsItIs) {
  const std::string pgn = GetParam().pgn;
  const std::string annotated = Annotated(pgn, "Words.");
  PgnReader before{std::string_view(pgn)};
  PgnReader after{std::string_view(annotated)};
  while (std::optional<PgnItem> was = before.Next()) {
    std::optional<PgnItem> is = after.Next();
    ASSERT_TRUE(is.has_value());
    EXPECT_EQ(is->faults.size(), was->faults.size());
    ASSERT_EQ(is->tree.nodes.size(), was->tree.nodes.size());
    for (std::size_t i = 0; i < was->tree.nodes.size(); ++i) {
      const GameNode& a = was->tree.nodes[i];
      const GameNode& b = is->tree.nodes[i];
      EXPECT_EQ(a.move, b.move);
      EXPECT_EQ(a.variations, b.variations);
      EXPECT_EQ(AuthorWords(was->tree, a), AuthorWords(is->tree, b));
      ASSERT_GE(b.nags.size(), a.nags.size());
    }
  }
  EXPECT_FALSE(after.Next().has_value());
}

INSTANTIATE_TEST_SUITE_P(
    Texts, OwnCommentsTest,
    ::testing::Values(
        Case{"Plain", "1. e4 e5 2. Nf3 *\n"},
        Case{"Marks", "1. e4! e5 $2 {why} 2. Nf3!? $14 (2. f4 {gambit}) Nc6 *"},
        Case{"CommentsThenNag", "1. e4 {first} $1 {second} e5 *\n"},
        Case{"LineComment", "1. e4 ; to the end\n1... e5 *\n"},
        Case{"WindowsLineEnds",
             "[Event \"x\"]\r\n\r\n1. e4 {a}\r\n1... e5 *\r\n"},
        Case{"NoSpaces", "1.e4(1.d4{q}d5)e5 2.Nf3*"},
        Case{"StartCommented",
             "[Event \"x\"]\n\n{before} 1. e4 ({instead} 1. d4) *\n"},
        Case{"Tagless", "{a comment first} 1. e4 e5 1-0\n\n1. d4 *\n"},
        Case{"SetUp",
             "[SetUp \"1\"]\n[FEN \"4k3/8/8/8/8/8/4P3/4K3 w - - 0 "
             "1\"]\n\n1. e4 Ke7 *\n"},
        Case{"Faulty", "1. e4 e5 2. Ke3 {x} *\n\n1. d4 d5 *\n"},
        Case{"Latin1", "1. e4 {K\xF6nig} e5 *\n"}),
    [](const auto& test) { return std::string(test.param.name); });

TEST(OwnComments, AddNoNagBesideTheAuthorsAssessment) {
  const std::string pgn = "1. e4 $10 e5 *";
  const std::string annotated = Annotated(pgn, "Words.");
  EXPECT_EQ(annotated.find("e4 $10 $14"), std::string::npos);
  EXPECT_NE(annotated.find("e5 $14"), std::string::npos);
}

TEST(OwnComments, LinesStayShort) {
  const std::string annotated =
      Annotated("1. e4 *", std::string(400, 'x').replace(200, 1, " ") +
                               " and words and words and words and words and "
                               "words and words and words and words");
  std::size_t longest = 0;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < annotated.size(); ++i) {
    if (annotated[i] != '\n') continue;
    if (annotated.find("xxxx", begin) > i)
      longest = std::max(longest, i - begin);
    begin = i + 1;
  }
  EXPECT_LE(longest, 80U);
}

TEST(OwnComments, AnAuthorWhoQuotesTheMarkIsNoneOfUs) {
  EXPECT_EQ(OursBegin("see [%assay] there"), std::string::npos);
  EXPECT_EQ(AuthorWords("see [%assay] there"), "see there");
  EXPECT_EQ(OursBegin("[%assayed] Words"), std::string::npos);
}

TEST(OwnComments, StandAloneOrBehindTheAuthors) {
  EXPECT_EQ(OursBegin("[%assay $14] Words."), 0U);
  EXPECT_EQ(OurWords("[%assay $14] Words\nhere."), "Words here.");
  EXPECT_EQ(OurNag("[%assay $14] Words."), 14);
  constexpr char kBoth[] = "A plan.\n[%assay $16] White is better.";
  EXPECT_EQ(AuthorWords(kBoth), "A plan.");
  EXPECT_EQ(OurWords(kBoth), "White is better.");
  EXPECT_EQ(OurNag(kBoth), 16);
  // One comment a move: some readers take no second.
  const std::string annotated = Annotated("1. e4 {why} e5 *", "Words.");
  EXPECT_EQ(annotated.find("}\n{"), std::string::npos);
}

}  // namespace
}  // namespace assay
