// What one move does to all fields of a position: named rows worked out by
// hand from the FIDE Laws (3.7, 3.8; numbers from memory) and from the PGN
// standard of 1994, 16.1.3 (what the fields of a FEN are).
#include "assay/notation/fen.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct Played : testing_support::Row {
  const char* before;
  const char* move;
  const char* after;
};

constexpr Played kPlayed[] = {
    {{"QuietMoveCountsUp"},
     "4k3/8/8/8/8/8/4P3/4K1N1 w - - 7 20",
     "g1f3",
     "4k3/8/8/8/8/5N2/4P3/4K3 b - - 8 20"},
    {{"BlacksMoveEndsTheFullMove"},
     "4k1n1/8/8/8/8/8/4P3/4K3 b - - 7 20",
     "g8f6",
     "4k3/8/5n2/8/8/8/4P3/4K3 w - - 8 21"},
    {{"PawnMoveResetsTheClock"},
     "4k3/8/8/8/8/8/4P3/4K3 w - - 49 70",
     "e2e3",
     "4k3/8/8/8/8/4P3/8/4K3 b - - 0 70"},
    {{"CaptureResetsTheClock"},
     "4k3/8/8/3p4/8/4N3/8/4K3 w - - 49 70",
     "e3d5",
     "4k3/8/8/3N4/8/8/8/4K3 b - - 0 70"},
    {{"WhiteCastlesKingside"},
     "r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 3 9",
     "e1g1",
     "r3k2r/8/8/8/8/8/8/R4RK1 b kq - 4 9"},
    {{"WhiteCastlesQueenside"},
     "r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 3 9",
     "e1c1",
     "r3k2r/8/8/8/8/8/8/2KR3R b kq - 4 9"},
    {{"BlackCastlesKingside"},
     "r3k2r/8/8/8/8/8/8/R3K2R b KQkq - 3 9",
     "e8g8",
     "r4rk1/8/8/8/8/8/8/R3K2R w KQ - 4 10"},
    {{"BlackCastlesQueenside"},
     "r3k2r/8/8/8/8/8/8/R3K2R b KQkq - 3 9",
     "e8c8",
     "2kr3r/8/8/8/8/8/8/R3K2R w KQ - 4 10"},
    {{"KingMoveLosesBothRights"},
     "r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1",
     "e1e2",
     "r3k2r/8/8/8/8/8/4K3/R6R b kq - 1 1"},
    {{"QueenRookLosesOneRight"},
     "r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1",
     "a1b1",
     "r3k2r/8/8/8/8/8/8/1R2K2R b Kkq - 1 1"},
    {{"KingRookLosesOneRight"},
     "r3k2r/8/8/8/8/8/8/R3K2R b KQkq - 0 1",
     "h8g8",
     "r3k1r1/8/8/8/8/8/8/R3K2R w KQq - 1 2"},
    {{"RookTakesRookAndBothSidesLoseARight"},
     "r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 5 9",
     "a1a8",
     "R3k2r/8/8/8/8/8/8/4K2R b Kk - 0 9"},
    {{"BishopTakesRookAndItsRight"},
     "r3k2r/8/8/8/8/8/1B6/4K3 w kq - 5 9",
     "b2h8",
     "r3k2B/8/8/8/8/8/8/4K3 b q - 0 9"},
    {{"OtherRookTakingTheRookTakesItsRight"},
     "4k3/8/8/8/8/8/7r/R3K2R b KQ - 5 9",
     "h2h1",
     "4k3/8/8/8/8/8/8/R3K2r w Q - 0 10"},
    {{"PromotionOnRookTakesItsRight"},
     "r3k3/1P6/8/8/8/8/8/4K3 w q - 5 9",
     "b7a8n",
     "N3k3/8/8/8/8/8/8/4K3 b - - 0 9"},
    {{"RookReturningHomeKeepsNoRight"},
     "4k3/8/8/8/8/8/7R/4K3 w - - 5 9",
     "h2h1",
     "4k3/8/8/8/8/8/8/4K2R b - - 6 9"},
    {{"PromotesToAQueen"},
     "8/4P1k1/8/8/8/8/8/4K3 w - - 5 9",
     "e7e8q",
     "4Q3/6k1/8/8/8/8/8/4K3 b - - 0 9"},
    {{"BlackPromotesToARook"},
     "4k3/8/8/8/8/8/p5K1/8 b - - 5 9",
     "a2a1r",
     "4k3/8/8/8/8/8/6K1/r7 w - - 0 10"},
    {{"WhiteTakesEnPassant"},
     "4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 9",
     "e5d6",
     "4k3/8/3P4/8/8/8/8/4K3 b - - 0 9"},
    {{"BlackTakesEnPassantOnTheEdge"},
     "4k3/8/8/8/Pp6/8/8/4K3 b - a3 0 9",
     "b4a3",
     "4k3/8/8/8/8/p7/8/4K3 w - - 0 10"},
    {{"EnPassantLapsesAfterAnotherMove"},
     "4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 9",
     "e1e2",
     "4k3/8/8/3pP3/8/8/4K3/8 b - - 1 9"},
    {{"TwoSteppingPawnOnOnesOwnFifthIsNoTarget"},
     "4k3/2p5/8/3pP3/8/8/8/4K3 w - d6 0 9",
     "e5e6",
     "4k3/2p5/4P3/3p4/8/8/8/4K3 b - - 0 9"},
};

class PlayedMove : public ::testing::TestWithParam<Played> {};

TEST_P(PlayedMove, GivesThePosition) {
  const Position before = testing_support::FromFen(GetParam().before);
  const Move move = testing_support::MoveOf(before, GetParam().move);
  EXPECT_EQ(ToFen(before.After(move)), GetParam().after);
}

TEST_P(PlayedMove, IsTakenBackWhole) {
  const Position before = testing_support::FromFen(GetParam().before);
  const Move move = testing_support::MoveOf(before, GetParam().move);
  Position position = before;
  const Position::Undo undo = position.Make(move);
  EXPECT_EQ(ToFen(position), GetParam().after);
  position.Unmake(move, undo);
  EXPECT_EQ(ToFen(position), GetParam().before);
}

INSTANTIATE_TEST_SUITE_P(Moves, PlayedMove, ::testing::ValuesIn(kPlayed),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
