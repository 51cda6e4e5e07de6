// One player's habits: who is found, what counts, and the statistics.
#include "assay/lesson/student.h"

#include <string>

#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace assay {
namespace {

TEST(Student, TheIntervalIsWilsons) {
  // 10 of 20: 0.299 to 0.701; 0 of 10: 0 to 0.278 (Wilson's score interval, as
  // tables of proportions give it; from memory).
  const ShareInterval half = WilsonInterval(10, 20);
  EXPECT_NEAR(half.low, 0.299, 0.001);
  EXPECT_NEAR(half.high, 0.701, 0.001);
  const ShareInterval none = WilsonInterval(0, 10);
  EXPECT_NEAR(none.low, 0.0, 1e-9);
  EXPECT_NEAR(none.high, 0.278, 0.001);
}

TEST(Student, IsKnownByTheWholeNameOrTheSurname) {
  EXPECT_TRUE(NamesPlayer("Cordes, Mila", "cordes, mila"));
  EXPECT_TRUE(NamesPlayer("Cordes, Mila", "Cordes"));
  EXPECT_FALSE(NamesPlayer("Cordes, Mila", "Cord"));
  EXPECT_FALSE(NamesPlayer("Cordes, Mila", "Mila"));
  EXPECT_FALSE(NamesPlayer("", ""));
  EXPECT_FALSE(NamesPlayer("?", "?"));  // not known (PGN standard, 8.1.1)
}

// A player who moves the pawns before the own king again and again, against
// one who does not: what is conceded is the king's shelter or its like.
std::string StormGame(int i) {
  return "[White \"Storm, Ina\"]\n[Black \"Quiet, Bo\"]\n\n"
         "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. c3 Nf6 5. d3 d6 6. O-O O-O 7. "
         "h3 h6 8. g4 a6 9. Kh2 Ba7 10. Kg3 Be6 11. h4 Qd7 *\n\n" +
         std::string(i % 2 == 0 ? "" : "\n");
}

TEST(Student, FindsWhatIsDoneAgainAndAgain) {
  const Assayer assayer;
  std::string pgn;
  for (int i = 0; i < 12; ++i) pgn += StormGame(i);
  PgnReader reader{std::string_view(pgn)};
  StudentStudy study;
  std::uint32_t game = 0;
  while (const std::optional<PgnItem> item = reader.Next()) {
    study.Add(StudyGame(game++, *item, "Storm", assayer));
  }
  const StudentReport report = study.Report();
  EXPECT_EQ(report.games, 12U);
  bool king = false;
  for (const Habit& habit : report.concessions) {
    king |= habit.id == "shelter" || habit.id == "flank_pawn_moved" ||
            habit.id == "king_ahead";
    EXPECT_GT(habit.interval.low, habit.others.share());
    EXPECT_LE(habit.clearest.size(), 3U);
    EXPECT_GE(habit.own.count, kLeastHabit);
  }
  EXPECT_TRUE(king);
}

TEST(Student, OneOfManyNeverPlayed) {
  const std::string pgn = StormGame(0);
  PgnReader reader{std::string_view(pgn)};
  const std::optional<PgnItem> item = reader.Next();
  ASSERT_TRUE(item.has_value());
  EXPECT_FALSE(StudyGame(0, *item, "Nobody", Assayer()).found);
}

}  // namespace
}  // namespace assay
