// An en passant square is kept exactly where the capture is legal (FIDE Laws
// 3.7.3.1 and 3.9, numbers from memory): after the move played, and from the
// FEN that names it in any case.
#include <string>

#include "assay/rules/movegen.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/random_play.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct DoubleStep : testing_support::Row {
  const char* before;
  const char* move;
  const char* kept;  // "-" for none
};

constexpr DoubleStep kDoubleSteps[] = {
    {{"NoPawnBeside"}, "4k3/8/8/8/8/8/4P3/4K3 w - -", "e2e4", "-"},
    {{"PawnBeside"}, "4k3/8/8/8/3p4/8/4P3/4K3 w - -", "e2e4", "e3"},
    {{"PawnOnEitherSide"}, "4k3/8/8/8/3p1p2/8/4P3/4K3 w - -", "e2e4", "e3"},
    {{"BlackStepsWhiteTakes"}, "4k3/3p4/8/4P3/8/8/8/4K3 b - -", "d7d5", "d6"},
    {{"PieceBesideIsNoPawn"}, "4k3/8/8/8/3n4/8/4P3/4K3 w - -", "e2e4", "-"},
    {{"OwnPawnBeside"}, "4k3/8/8/8/3P4/8/4P3/4K3 w - -", "e2e4", "-"},
    {{"SingleStep"}, "4k3/8/8/8/3p4/8/4P3/4K3 w - -", "e2e3", "-"},
    {{"SingleStepFromTheThird"}, "4k3/8/8/8/3p4/4P3/8/4K3 w - -", "e3e4", "-"},
    {{"EdgeFileA"}, "4k3/8/8/8/1p6/8/P7/4K3 w - -", "a2a4", "a3"},
    {{"EdgeFileH"}, "4k3/7p/8/6P1/8/8/8/4K3 b - -", "h7h5", "h6"},
    {{"BoardDoesNotWrapAround"}, "4k3/8/8/p7/p7/8/7P/4K3 w - -", "h2h4", "-"},
    {{"BothPawnsLeaveTheRankOfThePin"},
     "8/8/8/8/R2p3k/8/4P3/4K3 w - -",
     "e2e4",
     "-"},
    {{"SecondPawnStillBlocksTheRank"},
     "8/8/8/8/R2p1p1k/8/4P3/4K3 w - -",
     "e2e4",
     "e3"},
    {{"PinnedOnTheFile"}, "3k4/8/8/8/3p4/8/4P3/3RK3 w - -", "e2e4", "-"},
    {{"PinnedOnTheOtherDiagonal"},
     "7k/8/8/8/3p4/8/1B2P3/4K3 w - -",
     "e2e4",
     "-"},
    {{"PinnedOnTheDiagonalOfTheCapture"},
     "8/8/1k6/8/3p4/8/4PB2/4K3 w - -",
     "e2e4",
     "e3"},
    {{"OnePinnedTheOtherFree"},
     "3k4/8/8/8/3p1p2/8/4P3/3RK3 w - -",
     "e2e4",
     "e3"},
    {{"StepGivesCheckCaptureParries"},
     "8/8/8/3k4/3p4/8/4P3/4K3 w - -",
     "e2e4",
     "e3"},
    {{"UncoveredCheckIsNotParried"},
     "8/8/k7/8/3p4/8/4P3/4KB2 w - -",
     "e2e4",
     "-"},
};

class PlayedDoubleStep : public ::testing::TestWithParam<DoubleStep> {};

TEST_P(PlayedDoubleStep, KeepsTheSquareOnlyIfTheCaptureIsLegal) {
  const Position before = testing_support::FromFen(GetParam().before);
  const Position after =
      before.After(testing_support::MoveOf(before, GetParam().move));
  EXPECT_EQ(ToString(after.en_passant()), GetParam().kept);
}

INSTANTIATE_TEST_SUITE_P(Moves, PlayedDoubleStep,
                         ::testing::ValuesIn(kDoubleSteps),
                         testing_support::NameOfRow());

struct Named : testing_support::Row {
  const char* fen;
  const char* kept;
};

constexpr Named kNamed[] = {
    {{"NobodyToTake"},
     "rnbqkbnr/pppppppp/8/8/4P3/8/PPPP1PPP/RNBQKBNR b KQkq e3",
     "-"},
    {{"TakerBeside"}, "4k3/8/8/8/3pP3/8/8/4K3 b - e3", "e3"},
    {{"TakerPinned"}, "1b1k4/8/8/1rPpK3/8/8/8/8 w - d6", "-"},
    {{"OnlyReplyToACheck"}, "8/8/8/1k6/3Pp3/8/8/4KQ2 b - d3", "d3"},
    {{"TakenPawnShieldsTheKing"}, "k7/8/8/8/3pP3/8/8/4K2B b - e3", "-"},
    {{"CheckFromElsewhere"}, "4k3/8/8/8/3pP3/8/8/K3R3 b - e3", "e3"},
    {{"KnightCheckStays"}, "4k3/8/3N4/8/3pP3/8/8/4K3 b - e3", "-"},
};

class NamedSquare : public ::testing::TestWithParam<Named> {};

TEST_P(NamedSquare, IsKeptOnlyIfTheCaptureIsLegal) {
  const Position position = testing_support::FromFen(GetParam().fen);
  EXPECT_EQ(ToString(position.en_passant()), GetParam().kept);
  EXPECT_EQ(position.hash(), position.HashFromScratch());
}

INSTANTIATE_TEST_SUITE_P(Fens, NamedSquare, ::testing::ValuesIn(kNamed),
                         testing_support::NameOfRow());

TEST(EnPassant, IsKeptIfAndOnlyIfAMoveTakesIt) {
  int kept = 0;
  testing_support::PlayAtRandom(3, 100'000, [&](const Position& p, Move) {
    MoveList moves;
    LegalMoves(p, moves);
    bool takes = false;
    for (const Move move : moves) {
      if (move.type() != Move::Type::kEnPassant) continue;
      takes = true;
      EXPECT_EQ(move.to(), p.en_passant());
    }
    EXPECT_EQ(takes, p.en_passant() != kNoSquare);
    if (takes) ++kept;
  });
  EXPECT_GT(kept, 100) << "the games hold too few captures to say anything";
}

}  // namespace
}  // namespace assay
