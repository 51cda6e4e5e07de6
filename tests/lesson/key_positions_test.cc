// Which positions of a lesson are chosen, why, and where else they arise.
#include "assay/lesson/key_positions.h"

#include <string>
#include <vector>

#include "assay/notation/fen.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace assay {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

std::vector<LessonGame> Read(const std::string& pgn,
                             const LessonSelection& selection = {}) {
  const Assayer assayer;
  const Lesson lesson(pgn, selection, assayer);
  LessonReader reader(lesson);
  std::vector<LessonGame> games;
  while (std::optional<LessonGame> game = reader.Next()) {
    games.push_back(*std::move(game));
  }
  return games;
}

TEST(KeyPositions, CommentsAssessmentsAndEndsByDefault) {
  const auto games = Read(
      "1. e4 {king's pawn} e5 2. Nf3 Nc6 $14 3. Bb5 (3. Bc4 Bc5) 3... a6 *");
  ASSERT_EQ(games.size(), 1U);
  const std::vector<KeyPosition>& keys = games[0].keys;
  ASSERT_EQ(keys.size(), 4U);
  EXPECT_THAT(keys[0].path, ElementsAre("e4"));
  EXPECT_EQ(keys[0].because, "the author commented here");
  EXPECT_THAT(keys[1].path, ElementsAre("e4", "e5", "Nf3", "Nc6"));
  EXPECT_EQ(keys[1].because, "the author assessed the position ($14)");
  EXPECT_EQ(keys[1].previous, 0U);
  EXPECT_THAT(keys[2].path,
              ElementsAre("e4", "e5", "Nf3", "Nc6", "Bc4", "Bc5"));
  EXPECT_EQ(keys[2].because, "the line ends here");
  EXPECT_EQ(keys[2].previous, 1U);
  EXPECT_THAT(keys[3].path, ElementsAre("e4", "e5", "Nf3", "Nc6", "Bb5", "a6"));
  // On its own line, not that of the variation before it.
  EXPECT_EQ(keys[3].previous, 1U);
}

TEST(KeyPositions, ACommandIsNoComment) {
  LessonSelection selection;
  selection.comments = true;
  const auto games =
      Read("1. e4 {[%clk 0:10:00]} e5 {[%clk 0:09:58] good} *", selection);
  ASSERT_EQ(games[0].keys.size(), 1U);
  EXPECT_THAT(games[0].keys[0].path, ElementsAre("e4", "e5"));
}

TEST(KeyPositions, EverySoManyPliesOfTheMainLine) {
  LessonSelection selection;
  selection.every_plies = 2;
  const auto games =
      Read("1. e4 e5 (1... c5 2. Nf3 d6) 2. Nf3 Nc6 3. Bb5 *", selection);
  ASSERT_EQ(games[0].keys.size(), 2U);
  EXPECT_THAT(games[0].keys[0].path, ElementsAre("e4", "e5"));
  EXPECT_THAT(games[0].keys[1].path, ElementsAre("e4", "e5", "Nf3", "Nc6"));
}

TEST(KeyPositions, AnotherOrderOfMovesIsTheSamePosition) {
  LessonSelection selection;
  selection.comments = true;
  const auto games = Read(
      "1. d4 d5 2. c4 e6 {here} *\n\n1. c4 e6 2. d4 d5 {and here} *\n\n"
      "1. c4 e6 2. Nc3 (2. d4 d5 3. Nc3) 2... d5 *\n",
      selection);
  ASSERT_EQ(games.size(), 3U);
  ASSERT_EQ(games[0].keys.size(), 1U);
  EXPECT_THAT(games[0].keys[0].also_reached,
              ElementsAre("game 2, after 2... d5: 1. c4 e6 2. d4 d5",
                          "game 3, after 2... d5, in a variation: 1. c4 e6 "
                          "2. d4 d5"));
  ASSERT_EQ(games[1].keys.size(), 1U);
  EXPECT_EQ(games[1].keys[0].explained_at, "game 1, after 2... e6");
  EXPECT_THAT(games[2].keys, IsEmpty());
}

TEST(KeyPositions, AnEnPassantCaptureMakesAnotherPosition) {
  // FIDE Laws 9.2: positions differ where a pawn could have been captured en
  // passant in one and not in the other.
  LessonSelection selection;
  selection.line_ends = true;
  const auto games = Read(
      "[SetUp \"1\"]\n[FEN \"4k3/8/8/8/3p4/8/4P3/4K3 w - - 0 1\"]\n\n"
      "1. e4 *\n\n[SetUp \"1\"]\n[FEN \"4k3/8/8/8/3p4/4P3/8/4K3 w - - 0 1\"]"
      "\n\n1. e4 *\n",
      selection);
  ASSERT_EQ(games.size(), 2U);
  EXPECT_EQ(games[1].keys[0].explained_at, "");
}

TEST(KeyPositions, TurnsWhereTheCentreCloses) {
  // The Classical King's Indian: d5 locks the centre (common practice).
  LessonSelection selection;
  selection.turning_points = true;
  const auto games = Read(
      "1. d4 Nf6 2. c4 g6 3. Nc3 Bg7 4. e4 d6 5. Nf3 O-O 6. Be2 e5 7. O-O Nc6 "
      "8. d5 Ne7 9. Ne1 Nd7 *",
      selection);
  bool closes = false;
  for (const KeyPosition& key : games[0].keys) {
    closes |=
        key.because == "the centre becomes closed" && key.path.size() == 15;
  }
  EXPECT_TRUE(closes);
}

TEST(KeyPositions, AFaultyGameKeepsWhatCameBeforeTheFault) {
  const auto games =
      Read("1. e4 {so far} e5 2. Ke3 {never} *\n\n1. d4 {next} *\n");
  ASSERT_EQ(games.size(), 2U);
  EXPECT_FALSE(games[0].item.ok());
  EXPECT_EQ(games[0].keys.front().because, "the author commented here");
  EXPECT_TRUE(games[1].item.ok());
  EXPECT_EQ(games[1].keys.size(), 1U);
}

}  // namespace
}  // namespace assay
