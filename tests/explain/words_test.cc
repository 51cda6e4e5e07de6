// Small words, and the text form as a whole.
#include "assay/explain/words.h"

#include <sstream>

#include "assay/explain/assayer.h"
#include "assay/explain/text.h"
#include "assay/notation/fen.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"
#include "tests/support/static_only.h"

namespace assay {
namespace {

using testing_support::StaticOnly;

using ::testing::HasSubstr;
using ::testing::Not;

TEST(Join, PutsAndBeforeTheLast) {
  EXPECT_EQ(Join({}), "");
  EXPECT_EQ(Join({"a"}), "a");
  EXPECT_EQ(Join({"a", "b"}), "a and b");
  EXPECT_EQ(Join({"a", "b", "c"}), "a, b and c");
}

TEST(NumberText, HasWordsUpToTen) {
  EXPECT_EQ(NumberText(0), "no");
  EXPECT_EQ(NumberText(1), "one");
  EXPECT_EQ(NumberText(10), "ten");
  EXPECT_EQ(NumberText(11), "11");
  EXPECT_EQ(NumberText(-1), "-1");
}

TEST(CountText, HasArticleOrPlural) {
  EXPECT_EQ(CountText(1, PieceKind::kPawn), "a pawn");
  EXPECT_EQ(CountText(2, PieceKind::kKnight), "two knights");
  EXPECT_EQ(CountText(3, PieceKind::kQueen), "three queens");
}

TEST(BreakText, HasDotsForBlack) {
  Claim claim;
  claim.squares = {kE7, kE5};
  claim.side = Side::kBlack;
  EXPECT_EQ(BreakText(claim), "...e5");
  claim.squares = {kC4, kC5};
  claim.side = Side::kWhite;
  EXPECT_EQ(BreakText(claim), "c5");
}

TEST(Capitalised, ChangesTheFirstLetterOnly) {
  EXPECT_EQ(Capitalised("a knight"), "A knight");
  EXPECT_EQ(Capitalised("White"), "White");
  EXPECT_EQ(Capitalised(""), "");
  EXPECT_EQ(Capitalised("...e5"), "...e5");
}

TEST(PawnsText, HasASignAndTwoDecimals) {
  EXPECT_EQ(PawnsText(0), "0.00");
  EXPECT_EQ(PawnsText(5), "+0.05");
  EXPECT_EQ(PawnsText(42), "+0.42");
  EXPECT_EQ(PawnsText(-105), "-1.05");
  EXPECT_EQ(PawnsText(1200), "+12.00");
}

std::vector<std::string> LinesOf(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

TEST(ToText, StartsWithThePositionAndKeepsToTheWidth) {
  const Assayer assayer;
  TextStyle style;
  style.ledger = true;
  testing_support::PlayPlausibly(41, 300, [&](const Position& position) {
    if (::testing::Test::HasFailure()) return;
    SCOPED_TRACE(::testing::PrintToString(position));
    const Explanation explanation = assayer.Explain(position, StaticOnly());
    for (const std::size_t width : {60U, 80U, 120U}) {
      style.width = width;
      const std::string text = ToText(explanation, style);
      EXPECT_EQ(text.back(), '\n');
      EXPECT_THAT(text, Not(HasSubstr("\x1b")));
      const std::vector<std::string> lines = LinesOf(text);
      EXPECT_EQ(lines.front(), ToFen(position));
      // FEN and verdict are not wrapped.
      for (std::size_t i = 2; i < lines.size(); ++i) {
        EXPECT_LE(lines[i].size(), width) << lines[i];
        EXPECT_NE(lines[i].back(), ' ') << lines[i];
      }
    }
  });
}

TEST(ToText, IsColouredOnRequestOnly) {
  const Explanation explanation =
      Assayer().Explain(Position::Initial(), StaticOnly());
  TextStyle style;
  style.colour = true;
  const std::string coloured = ToText(explanation, style);
  EXPECT_THAT(coloured, HasSubstr("\x1b[1m"));
  std::string plain;
  for (std::size_t i = 0; i < coloured.size(); ++i) {
    if (coloured[i] == '\x1b') {
      i = coloured.find('m', i);
    } else {
      plain += coloured[i];
    }
  }
  EXPECT_EQ(plain, ToText(explanation));
}

TEST(ToText, ShowsEveryEntryOfTheLedgerOnRequest) {
  const Position position = testing_support::FromFen(
      "r1bq1rk1/pp3ppp/2n1pn2/3p4/3P4/2N2N2/PP3PPP/R1BQ1RK1 w - - 0 9");
  const Explanation explanation = Assayer().Explain(position, StaticOnly());
  TextStyle style;
  style.ledger = true;
  style.width = 1000;
  const std::string text = ToText(explanation, style);
  for (const ExplainedEntry& entry : explanation.ledger) {
    EXPECT_THAT(text, HasSubstr(PawnsText(entry.entry.value_cp) + "  " +
                                entry.text + "\n"));
    EXPECT_THAT(ToText(explanation), Not(HasSubstr(entry.text)));
  }
}

}  // namespace
}  // namespace assay
