// What a handout's parts have to hold to, whatever the position.
#include "assay/lesson/handout.h"

#include <cstdlib>
#include <regex>
#include <string>

#include "assay/explain/assayer.h"
#include "assay/explain/text.h"
#include "assay/lesson/diagram.h"
#include "assay/lesson/markup.h"
#include "assay/lesson/waterfall.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using testing_support::FromFen;

constexpr const char* kFens[] = {
    "r1bq1rk1/p4ppp/1pn1pn2/2pp4/3P1B2/2PBPN2/P1P2PPP/R2Q1RK1 w - - 0 10",
    "r1bq1rk1/pp1nbppp/2n1p3/2ppP3/3P1P2/2P1BN2/PP1NB1PP/R2Q1RK1 b - - 0 10",
    "4r1k1/5pp1/7p/1R6/1P6/6P1/5P1P/6K1 w - - 0 33",
    "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1",
    "7k/5Q2/6K1/8/8/8/8/8 b - - 0 1",
};

std::vector<double> FiguresOf(const std::string& html) {
  std::vector<double> figures;
  const std::regex figure("class=\"figure\">([-+0-9.]+)<");
  for (auto i = std::sregex_iterator(html.begin(), html.end(), figure);
       i != std::sregex_iterator(); ++i) {
    figures.push_back(std::strtod((*i)[1].str().c_str(), nullptr));
  }
  return figures;
}

TEST(Waterfall, StepsAddUpToTheScoreItEndsAt) {
  for (const char* fen : kFens) {
    const Explanation explanation = Assayer().Explain(FromFen(fen));
    const std::vector<double> figures = FiguresOf(Waterfall(explanation));
    ASSERT_FALSE(figures.empty()) << fen;
    double sum = 0;
    for (std::size_t i = 0; i + 1 < figures.size(); ++i) sum += figures[i];
    EXPECT_NEAR(sum, figures.back(), 0.001) << fen;
    EXPECT_NEAR(figures.back(), explanation.score_cp / 100.0, 0.001) << fen;
  }
}

TEST(Diagram, SaysTheWholePositionInWords) {
  EXPECT_EQ(DescribeBoard(FromFen("4k3/8/8/3p4/8/8/4P3/R3K3 b - - 0 1")),
            "White: king e1, rook a1, pawn e2; Black: king e8, pawn d5; Black "
            "to move.");
}

TEST(Diagram, DrawsEveryPieceOnce) {
  const std::string drawing = Diagram(Position::Initial(), {});
  const auto count = [&](const std::string& text) {
    std::size_t found = 0;
    for (std::size_t i = 0; (i = drawing.find(text, i)) != std::string::npos;
         ++i) {
      ++found;
    }
    return found;
  };
  EXPECT_EQ(count("\"#wp\""), 8U);
  EXPECT_EQ(count("\"#bn\""), 2U);
  EXPECT_EQ(count("\"#wk\""), 1U);
  EXPECT_EQ(count("\"#bq\""), 1U);
}

TEST(Handout, AnAuthorsTextIsNeverMarkup) {
  const Assayer assayer;
  const Lesson lesson(
      "[White \"<script>alert(1)</script>\"]\n[Black \"B & C\"]\n\n"
      "1. e4 {<img src=x onerror=alert(1)> & \"quotes\"} *",
      {}, assayer);
  LessonReader reader(lesson);
  const std::optional<LessonGame> game = reader.Next();
  ASSERT_TRUE(game.has_value());
  ASSERT_EQ(game->keys.size(), 1U);
  ExplainOptions options;
  options.static_only = true;
  const Explanation explanation =
      assayer.Explain(game->keys[0].position, options);
  const HandoutParts parts =
      MakeHandoutParts({game->keys[0], game->item.tree, explanation});
  EXPECT_THAT(parts.section, Not(HasSubstr("<script")));
  EXPECT_THAT(parts.section, Not(HasSubstr("<img")));
  EXPECT_THAT(parts.section, HasSubstr("&lt;img"));
  EXPECT_THAT(parts.section, HasSubstr("B &amp; C"));
}

TEST(Handout, AFinishedGameAsksNothing) {
  const Assayer assayer;
  const Lesson lesson("1. f3 e5 2. g4 Qh4# 0-1", {}, assayer);
  LessonReader reader(lesson);
  const std::optional<LessonGame> game = reader.Next();
  ASSERT_TRUE(game.has_value());
  const KeyPosition& key = game->keys.back();
  const HandoutParts parts =
      MakeHandoutParts({key, game->item.tree, assayer.Explain(key.position)});
  EXPECT_EQ(parts.exercise, "");
  EXPECT_EQ(parts.verdict, "White is checkmated.");
}

}  // namespace
}  // namespace assay
