// The three questions of movegen.h (which, how many, any) have one answer, and
// what a list says of its moves is true of the board.
#include "assay/rules/movegen.h"

#include <cstdint>
#include <set>

#include "assay/notation/san.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/random_play.h"

namespace assay {
namespace {

TEST(LegalMoves, AreCountedAndListedAlike) {
  testing_support::PlayAtRandom(1, 50'000, [](const Position& p, Move played) {
    if (::testing::Test::HasFailure()) return;
    MoveList moves;
    LegalMoves(p, moves);
    ASSERT_EQ(static_cast<std::size_t>(CountLegalMoves(p)), moves.size());
    ASSERT_EQ(HasLegalMove(p), !moves.empty());
    ASSERT_TRUE(IsLegal(p, played));
    ASSERT_FALSE(IsLegal(p, Move()));
    std::set<std::uint16_t> distinct;
    for (const Move move : moves) distinct.insert(move.code());
    ASSERT_EQ(distinct.size(), moves.size()) << "a move is listed twice";
  });
}

// FIDE Laws 3.9 (number from memory): no move may leave one's own king
// attacked. And the three special moves are those that look like it.
TEST(LegalMoves, LeaveTheKingSafeAndAreWhatTheySayTheyAre) {
  testing_support::PlayAtRandom(2, 30'000, [](const Position& p, Move) {
    if (::testing::Test::HasFailure()) return;
    const Side us = p.side_to_move();
    MoveList moves;
    LegalMoves(p, moves);
    for (const Move move : moves) {
      const Position after = p.After(move);
      ASSERT_FALSE(after.IsAttacked(Other(us), after.King(us)))
          << ToCoordinates(move) << ' ' << ::testing::PrintToString(p);
      const Piece mover = p.At(move.from());
      ASSERT_EQ(mover.side(), us);
      const bool is_pawn = mover.kind() == PieceKind::kPawn;
      ASSERT_EQ(move.is_promotion(),
                is_pawn && RelativeRank(us, move.to()) == 7);
      ASSERT_EQ(move.type() == Move::Type::kEnPassant,
                is_pawn && FileOf(move.from()) != FileOf(move.to()) &&
                    p.At(move.to()).empty());
      ASSERT_EQ(move.type() == Move::Type::kCastling,
                mover.kind() == PieceKind::kKing &&
                    KingDistance(move.from(), move.to()) == 2);
    }
  });
}

// The most moves that any known position has, 218, is common practice, no
// source; the position is Petrovic's of 1964, from memory. What matters here
// is that the list holds them and that both ways to count agree.
TEST(LegalMoves, HoldTheLargestKnownCount) {
  const Position position = testing_support::FromFen(
      "R6R/3Q4/1Q4Q1/4Q3/2Q4Q/Q4Q2/pp1Q4/kBNN1KB1 w - - 0 1");
  MoveList moves;
  LegalMoves(position, moves);
  EXPECT_EQ(moves.size(), 218U);
  EXPECT_EQ(CountLegalMoves(position), 218);
}

}  // namespace
}  // namespace assay
