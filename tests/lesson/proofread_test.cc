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
      for (Finding& finding : checked.findings) {
        // In words, not by the name that programs know it by.
        EXPECT_FALSE(finding.title.empty()) << finding.kind;
        EXPECT_EQ(finding.title.find('_'), std::string::npos) << finding.title;
        findings.push_back(finding);
      }
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

TEST(Proofread, AFaultIsToldWhereItsLineStands) {
  // The move before it is 1... e5, not the end of the variation.
  const auto findings = Check("1. e4 e5 (1... c5 2. Nf3) 2. Bb6 *");
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_THAT(findings[0].path, ElementsAre("e4", "e5"));
  EXPECT_EQ(findings[0].found, "No legal move of White is written so.");
  const auto two = Check("1. Nf3 d5 2. d3 e6 3. Nd2 *");
  ASSERT_EQ(two.size(), 1U);
  EXPECT_EQ(two[0].found, "It could be Nbd2 or Nfd2.");
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

// A game that ends on a position with an assessment of it.
std::string Assessed(const std::string& fen, const std::string& move, int nag) {
  return "[SetUp \"1\"]\n[FEN \"" + fen + "\"]\n\n" + move + " $" +
         std::to_string(nag) + " *\n\n";
}

AssessedPlace PlaceOf(const std::string& fen, const std::string& move) {
  const Assayer assayer;
  const std::string pgn = Assessed(fen, move, 11);
  PgnReader reader{std::string_view(pgn)};
  const std::optional<PgnItem> item = reader.Next();
  const ProofreadSettings settings{assayer, 12000, nullptr, true};
  for (const ProofreadTask& task : ProofreadTasks(*item)) {
    Checked checked = Proofread(task, 0, *item, settings);
    if (checked.assessed.has_value()) return *checked.assessed;
  }
  ADD_FAILURE() << pgn;
  return {};
}

// What counts is who moves, the pawns, and how many pieces there are.
TEST(Structures, AreNearlyTheSameWhereverThePiecesStand) {
  const auto key = [](const std::string& fen, const std::string& move) {
    return PlaceOf(fen, move).structure;
  };
  const std::uint64_t rook_a =
      key("4k3/pp3ppp/8/3p4/3P4/8/PP3PPP/R3K3 w - - 0 1", "Kd2");
  EXPECT_EQ(rook_a,
            key("6k1/pp3ppp/8/3p4/3P4/8/PP3PPP/2R1K3 w - - 0 1", "Ke2"));
  // The colours swapped: Black has the rook and has just moved.
  EXPECT_EQ(rook_a, key("r3k3/pp3ppp/8/3p4/3P4/8/PP3PPP/4K3 b - - 0 1", "Kd7"));
  // A pawn on another square, another piece, another side to move.
  EXPECT_NE(rook_a,
            key("4k3/pp3ppp/8/3p4/3P4/7P/PP3PP1/R3K3 w - - 0 1", "Kd2"));
  EXPECT_NE(rook_a, key("4k3/pp3ppp/8/3p4/3P4/8/PP3PPP/B3K3 w - - 0 1", "Kd2"));
  EXPECT_NE(rook_a, key("4k3/pp3ppp/8/3p4/3P4/8/PP3PPP/R3K3 b - - 0 1", "Kd7"));
  EXPECT_NE(rook_a, key("4k3/pp3ppp/8/3p4/3P4/8/PP3PPP/4K3 w - - 0 1", "Kd2"));
}

// Assessments of positions of one structure, one after another.
class Clashes {
 public:
  // The kind that is found of the next, or nothing.
  std::string Add(int nag, Centipawns proved_cp, Side to_move = Side::kWhite,
                  bool off = false, std::uint64_t structure = 7) {
    Checked checked;
    AssessedPlace place;
    place.hash = ++number_;
    place.structure = structure;
    place.to_move = to_move;
    place.nag = nag;
    place.proved_cp = proved_cp;
    place.off = off;
    place.finding.place = "game " + std::to_string(number_);
    checked.assessed = place;
    finder_.Add(checked);
    if (checked.findings.empty()) return "";
    found_ = checked.findings[0].found;
    return checked.findings[0].kind;
  }
  const std::string& found() const { return found_; }

 private:
  ClashFinder finder_;
  std::uint64_t number_ = 0;
  std::string found_;
};

TEST(Structures, ClashWhereVerdictsAreApartAndPlayIsNot) {
  Clashes one;
  EXPECT_EQ(one.Add(10, 35), "");
  EXPECT_EQ(one.Add(16, 80), "structure");  // equal, and a moderate advantage
  EXPECT_THAT(one.found(), HasSubstr("in game 1, is given $10"));
  EXPECT_THAT(one.found(), HasSubstr("+0.80 and +0.35"));
  Clashes sides;
  EXPECT_EQ(sides.Add(14, 15), "");
  EXPECT_EQ(sides.Add(15, -12), "structure");
  // Who moves in swapped colours is the other, and so is whose advantage it is.
  Clashes swapped;
  EXPECT_EQ(swapped.Add(14, 40), "");
  EXPECT_EQ(swapped.Add(15, -40, Side::kBlack), "");
  EXPECT_EQ(swapped.Add(14, 15, Side::kBlack), "structure");
  EXPECT_THAT(swapped.found(), HasSubstr("the colours swapped"));
}

TEST(Structures, DoNotClashWithoutReason) {
  Clashes step;  // one step is a matter of taste
  EXPECT_EQ(step.Add(10, 35), "");
  EXPECT_EQ(step.Add(14, 35), "");
  Clashes far;  // the pieces make the difference
  EXPECT_EQ(far.Add(10, 10), "");
  EXPECT_EQ(far.Add(16, 75), "");
  Clashes off;  // told already, by itself
  EXPECT_EQ(off.Add(10, 35), "");
  EXPECT_EQ(off.Add(16, 36, Side::kWhite, true), "");
  Clashes other;
  EXPECT_EQ(other.Add(10, 35), "");
  EXPECT_EQ(other.Add(16, 80, Side::kWhite, false, 8), "");
}

// From a PGN: an isolated queen's pawn with the pieces here and there. Of all
// these, two are told differently that play brings close to each other.
TEST(Structures, TwoVerdictsInALessonClash) {
  struct Told {
    Centipawns worth;  // for Black, who besieges the pawn
    std::string fen;
  };
  std::vector<Told> told;
  for (const char* last : {"3R3K", "2R4K", "4R2K"}) {
    for (const char* sixth : {"2n1p3", "1n2p3", "4pn2"}) {
      for (const char* third : {"2NB4", "3B1N2"}) {
        const std::string fen = std::string("3r2k1/pp1b1ppp/") + sixth +
                                "/8/3P4/" + third + "/PP3PPP/" + last +
                                " w - - 0 20";
        told.push_back({-PlaceOf(fen, "Kg1").proved_cp, fen});
      }
    }
  }
  // On either side of the border, by no more than what search may be off.
  const Told* even = nullptr;
  const Told* better = nullptr;
  for (const Told& each : told) {
    if (each.worth >= 0 && each.worth < 48 &&
        (even == nullptr || each.worth > even->worth)) {
      even = &each;
    }
    if (each.worth > 72 && (better == nullptr || each.worth < better->worth)) {
      better = &each;
    }
  }
  ASSERT_NE(even, nullptr);
  ASSERT_NE(better, nullptr);
  ASSERT_LE(better->worth - even->worth, kNearlySame);
  const std::string lesson =
      Assessed(even->fen, "Kg1", 11) + Assessed(better->fen, "Kg1", 17);
  const auto findings = Check(lesson);
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].kind, "structure");
  EXPECT_EQ(findings[0].game, 1U);
  EXPECT_THAT(findings[0].found, HasSubstr("in game 1, after 20. Kg1"));
  // Told alike, both stand.
  EXPECT_THAT(
      Kinds(Assessed(even->fen, "Kg1", 11) + Assessed(better->fen, "Kg1", 15)),
      IsEmpty());
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
