// Findings one kind at a time: the fault, and what is like it but sound. How
// often it is right is measured by proofread_measure.mjs.
#include "assay/lesson/proofread.h"

#include <algorithm>
#include <string>
#include <vector>

#include "assay/lesson/lesson_comment.h"
#include "assay/lesson/own_comments.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace assay {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

std::vector<Finding> Check(const std::string& pgn) {
  const Assayer assayer;
  const ProofreadSettings settings{assayer, 12000, nullptr, true};
  std::vector<Finding> findings;
  ClashFinder clashes;
  PgnReader reader{std::string_view(pgn)};
  std::uint32_t game = 0;
  while (const std::optional<PgnItem> item = reader.Next()) {
    for (const ProofreadTask& task : ProofreadTasks(*item)) {
      Checked checked = Proofread(task, game, *item, settings);
      clashes.Add(checked);
      for (Finding& finding : checked.findings) findings.push_back(finding);
    }
    ++game;
  }
  return findings;
}

std::vector<std::string> Kinds(const std::string& pgn) {
  std::vector<std::string> kinds;
  for (const Finding& finding : Check(pgn)) kinds.push_back(finding.kind);
  return kinds;
}

// 1. e4 c6 and so on: the trap in the Advance French, in every beginner's book
// (from memory): after 8... Qxd4 9. Bb5+ wins the queen.
constexpr char kTrap[] =
    "1. e4 e6 2. d4 d5 3. e5 c5 4. c3 Nc6 5. Nf3 Qb6 6. Bd3 cxd4 7. cxd4 ";

TEST(Proofread, IllegalAndAmbiguousMoves) {
  EXPECT_THAT(Kinds("1. e4 e5 2. Bb6 Nc6 *"), ElementsAre("illegal_move"));
  EXPECT_THAT(Kinds("1. Nf3 d5 2. d3 e6 3. Nd2 *"),
              ElementsAre("ambiguous_move"));
}

TEST(Proofread, ALineThatStopsWhereTheQueenFalls) {
  const auto findings = Check(std::string(kTrap) + "Nxd4 8. Nxd4 Qxd4 *");
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].kind, "hanging_end");
  EXPECT_THAT(findings[0].found, HasSubstr("9. Bb5+"));
  ASSERT_TRUE(findings[0].proof.has_value());
  // The author who says so is right.
  EXPECT_THAT(Kinds(std::string(kTrap) +
                    "Nxd4 8. Nxd4 Qxd4 {loses the queen to Bb5+} *"),
              IsEmpty());
  // And so is a game that was given up there.
  EXPECT_THAT(Kinds(std::string(kTrap) + "Nxd4 8. Nxd4 Qxd4 1-0"), IsEmpty());
}

TEST(Proofread, AGoodMoveThatLoses) {
  EXPECT_THAT(Kinds(std::string(kTrap) +
                    "Nxd4 8. Nxd4 Qxd4 $1 9. Bb5+ Bd7 10. Qxd4 1-0"),
              ElementsAre("good_move"));
  EXPECT_THAT(Kinds(std::string(kTrap) +
                    "Nxd4 8. Nxd4 Qxd4 $4 9. Bb5+ $1 Bd7 10. Qxd4 1-0"),
              IsEmpty());
}

TEST(Proofread, TheStrongestReplyIsNotGiven) {
  const auto findings =
      Check(std::string(kTrap) + "Nxd4 8. Nxd4 Qxd4 9. O-O (9. Nc3) 1-0");
  ASSERT_FALSE(findings.empty());
  EXPECT_EQ(findings[0].kind, "missing_reply");
  EXPECT_THAT(findings[0].found, HasSubstr("9. Bb5+"));
  // Given in a comment, or the reply told to be weak: nothing is missing.
  for (const char* rest : {"9. O-O {White has missed Bb5+} (9. Nc3) 1-0",
                           "9. O-O $4 (9. Nc3 $2) 1-0"}) {
    EXPECT_THAT(Kinds(std::string(kTrap) + "Nxd4 8. Nxd4 Qxd4 " + rest),
                Not(Contains("missing_reply")));
  }
}

TEST(Proofread, AnAssessmentThatDoesNotFit) {
  // A rook up: decisive, for White (common practice).
  const std::string setup =
      "[SetUp \"1\"]\n[FEN \"4k3/pp3ppp/8/8/8/8/PP3PPP/R3K3 w - - 0 1\"]\n\n";
  EXPECT_THAT(Kinds(setup + "1. Kd2 $18 *"), IsEmpty());
  EXPECT_THAT(Kinds(setup + "1. Kd2 $20 *"), IsEmpty());
  EXPECT_THAT(Kinds(setup + "1. Kd2 $10 *"), ElementsAre("assessment"));
  EXPECT_THAT(Kinds(setup + "1. Kd2 $14 *"), ElementsAre("assessment"));
  EXPECT_THAT(Kinds(setup + "1. Kd2 $19 *"), ElementsAre("assessment"));
}

TEST(Proofread, TwoVerdictsForOnePosition) {
  const auto findings = Check(
      "1. d4 d5 2. c4 e6 3. Nc3 Nf6 $11 *\n\n1. c4 e6 2. Nc3 d5 3. d4 Nf6 $12 "
      "*\n\n1. c4 Nf6 2. d4 e6 3. Nc3 d5 $15 *\n");
  ASSERT_FALSE(findings.empty());
  EXPECT_EQ(findings.back().kind, "transposition");
  EXPECT_EQ(findings.back().game, 2U);
  EXPECT_THAT(findings.back().found, HasSubstr("game 1, after 3... Nf6"));
}

TEST(Proofread, OurOwnCommentOfAnotherDay) {
  const std::string pgn = "1. e4 e5 2. Nf3 Nc6 *";
  PgnReader reader{std::string_view(pgn)};
  const std::optional<PgnItem> item = reader.Next();
  ASSERT_TRUE(item.has_value());
  const auto at = static_cast<NodeIndex>(item->tree.nodes.size() - 1);
  ExplainOptions options;
  options.proof_nodes = 12000;
  const std::string words =
      LessonComment(Assayer().Explain(item->tree.PositionAfter(at), options));
  const auto with = [&](const std::string& text) {
    std::string annotated = pgn;
    const auto insertions = InsertionsAt(*item, at, 11, text, "\n");
    for (auto i = insertions.rbegin(); i != insertions.rend(); ++i) {
      annotated.insert(i->offset, i->text);
    }
    return annotated;
  };
  EXPECT_THAT(Kinds(with(words)), IsEmpty());
  EXPECT_THAT(Kinds(with(words + " Black has no king.")),
              ElementsAre("own_comment"));
}

TEST(Assessments, StepsAndDistances) {
  EXPECT_EQ(AssessmentStep(11), 0);
  EXPECT_EQ(AssessmentStep(14), 1);
  EXPECT_EQ(AssessmentStep(17), -2);
  EXPECT_EQ(AssessmentStep(18), AssessmentStep(20));
  EXPECT_EQ(DistanceFrom(11, 0), 0);
  EXPECT_EQ(DistanceFrom(14, 60), 0);
  EXPECT_GT(DistanceFrom(14, -60), DistanceFrom(14, 0));
  EXPECT_EQ(DistanceFrom(15, -60), 0);
  EXPECT_EQ(DistanceFrom(19, -2000), 0);
  EXPECT_EQ(DistanceFrom(16, -100), DistanceFrom(17, 100));
}

}  // namespace
}  // namespace assay
