// SAN, against the PGN standard of 1994, section 8.2.3: what is written for
// each move. What is read is the matter of san_reading_test.cc.
#include "assay/notation/san.h"

#include <set>
#include <string>
#include <vector>

#include "assay/rules/movegen.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/random_play.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct Written : testing_support::Row {
  const char* fen;
  const char* coordinates;
  const char* san;
};

constexpr char kThreeQueens[] = "Q7/1p5k/Q1Q5/8/8/8/8/4K3 w - - 0 1";
constexpr char kFourKnights[] = "7k/8/8/1N3N2/8/1N3N2/8/K7 w - - 0 1";

constexpr Written kWritten[] = {
    // The standard's own: the knight on c3 is pinned, so "Ne2" is enough.
    {{"StandardPinnedKnight"},
     "rnbqk1nr/ppp2ppp/4p3/3p4/1b1PP3/2N5/PPP2PPP/R1BQKBNR w KQkq - 2 4",
     "g1e2",
     "Ne2"},
    {{"FreeKnightIsToldApart"},
     "rnbqk1nr/ppp2ppp/4p3/3p4/3PP3/2N5/PPP2PPP/R1BQKBNR w KQkq - 2 4",
     "g1e2",
     "Nge2"},
    // The standard's longest and shortest moves by their form.
    {{"StandardLongest"}, kThreeQueens, "a6b7", "Qa6xb7#"},
    {{"StandardPromotionWithCapture"},
     "4k3/8/8/8/8/8/5p2/6NK b - - 0 1",
     "f2g1q",
     "fxg1=Q+"},
    {{"StandardShortest"},
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
     "d2d4",
     "d4"},
    // Disambiguation: file, else rank, else both.
    {{"ByFile"}, "4k3/8/8/8/8/5N2/8/1N2K3 w - - 0 1", "b1d2", "Nbd2"},
    {{"ByFileOfTheOther"}, "4k3/8/8/8/8/5N2/8/1N2K3 w - - 0 1", "f3d2", "Nfd2"},
    {{"ByRankOnOneFile"}, "R7/8/7k/8/8/8/8/R3K3 w - - 0 1", "a1a4", "R1a4"},
    {{"ByFileOnOneRank"}, "6k1/8/8/8/R6R/8/8/4K3 w - - 0 1", "a4d4", "Rad4"},
    {{"ByFileThoughRankWouldDo"},
     "4k3/8/8/8/8/2N5/8/4K1N1 w - - 0 1",
     "c3e2",
     "Nce2"},
    {{"ByRankAmongThree"}, kThreeQueens, "a8b7", "Q8xb7+"},
    {{"ByFileAmongThree"}, kThreeQueens, "c6b7", "Qcxb7#"},
    {{"BySquare"}, kFourKnights, "b3d4", "Nb3d4"},
    {{"BySquareTheOppositeCorner"}, kFourKnights, "f5d4", "Nf5d4"},
    {{"RookInTheWayNeedsNone"},
     "6k1/8/8/8/R2N3R/8/8/4K3 w - - 0 1",
     "a4c4",
     "Rc4"},
    {{"PinnedRookNeedsNone"},
     "4r2k/8/8/8/R3R3/8/8/4K3 w - - 0 1",
     "a4c4",
     "Rc4"},
    {{"RookPinnedAlongItsWayCounts"},
     "4r2k/8/R7/8/4R3/8/8/4K3 w - - 0 1",
     "a6e6",
     "Rae6"},
    {{"OtherKindNeedsNone"}, "6k1/8/8/8/8/3B4/8/Q3K3 w - - 0 1", "d3b1", "Bb1"},
    {{"OtherSidesPieceNeedsNone"},
     "7k/8/8/8/8/5n2/8/1N5K b - - 0 1",
     "f3d2",
     "Nd2"},
    {{"CapturesAreToldApart"},
     "4k3/8/8/8/3p4/5N2/2N5/4K3 w - - 0 1",
     "c2d4",
     "Ncxd4"},
    {{"PawnCapturesNameTheFile"},
     "4k3/8/8/3p4/2P1P3/8/8/4K3 w - - 0 1",
     "e4d5",
     "exd5"},
    {{"EnPassantIsACapture"},
     "4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1",
     "e5d6",
     "exd6"},
    {{"KingsMove"}, "4k3/8/8/8/8/8/8/4K3 w - - 0 1", "e1d2", "Kd2"},
    {{"KingsCapture"}, "4k3/8/8/8/8/8/3p4/4K3 w - - 0 1", "e1d2", "Kxd2"},
    {{"Kingside"}, "4k3/8/8/8/8/8/8/4K2R w K - 0 1", "e1g1", "O-O"},
    {{"Queenside"}, "r3k3/8/8/8/8/8/8/4K3 b q - 0 1", "e8c8", "O-O-O"},
    {{"CastlingWithCheck"}, "5k2/8/8/8/8/8/8/4K2R w K - 0 1", "e1g1", "O-O+"},
    {{"CastlingWithMate"},
     "4rkr1/4p1p1/8/8/8/8/8/4K2R w K - 0 1",
     "e1g1",
     "O-O#"},
    {{"Promotion"}, "8/P6k/8/8/8/8/8/4K3 w - - 0 1", "a7a8q", "a8=Q"},
    {{"PromotionToKnightWithCheck"},
     "8/P1k5/8/8/8/8/8/4K3 w - - 0 1",
     "a7a8n",
     "a8=N+"},
    {{"Underpromotion"}, "8/P6k/8/8/8/8/8/4K3 w - - 0 1", "a7a8b", "a8=B"},
    {{"DiscoveredCheckHasThePlainSign"},
     "4k3/8/8/8/8/8/4N3/K3R3 w - - 0 1",
     "e2c3",
     "Nc3+"},
    {{"DoubleCheckHasThePlainSign"},
     "4k3/8/8/8/4N3/8/8/K3R3 w - - 0 1",
     "e4d6",
     "Nd6+"},
    {{"BackRankMate"}, "6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1", "a1a8", "Ra8#"},
    {{"StalemateHasNoSign"}, "7k/8/6K1/8/8/8/8/5Q2 w - - 0 1", "f1f7", "Qf7"},
};

class WrittenMove : public ::testing::TestWithParam<Written> {};

TEST_P(WrittenMove, IsTheStandards) {
  const Position position = testing_support::FromFen(GetParam().fen);
  const Move move = testing_support::MoveOf(position, GetParam().coordinates);
  ASSERT_EQ(ToCoordinates(move), GetParam().coordinates);
  EXPECT_EQ(ToSan(position, move), GetParam().san);
}

INSTANTIATE_TEST_SUITE_P(Moves, WrittenMove, ::testing::ValuesIn(kWritten),
                         testing_support::NameOfRow());

TEST(ToSan, WritesALineWithPasses) {
  const Position position = Position::Initial();
  std::vector<Move> line = {Move(kE2, kE4), Move(), Move(kD2, kD4),
                            Move(kE7, kE5), Move(), Move(kE5, kD4)};
  EXPECT_THAT(ToSan(position, line),
              ::testing::ElementsAre("e4", "--", "d4", "e5", "--", "exd4"));
}

// In one position no two moves have one text, each text is read back as its
// move, and so are the coordinates.
TEST(ToSan, IsReadBackAsTheOneMove) {
  testing_support::PlayAtRandom(12, 20'000, [](const Position& p, Move) {
    if (::testing::Test::HasFailure()) return;
    MoveList moves;
    LegalMoves(p, moves);
    std::set<std::string> texts;
    for (const Move move : moves) {
      const std::string san = ToSan(p, move);
      ASSERT_TRUE(texts.insert(san).second) << san << " twice";
      ASSERT_GE(san.size(), 2U);
      ASSERT_LE(san.size(), 7U);
      const absl::StatusOr<Move> read = ParseSan(p, san);
      ASSERT_TRUE(read.ok()) << san << ' ' << read.status();
      ASSERT_EQ(*read, move) << san;
      const absl::StatusOr<Move> moved = ParseMove(p, ToCoordinates(move));
      ASSERT_TRUE(moved.ok()) << ToCoordinates(move) << ' ' << moved.status();
      ASSERT_EQ(*moved, move);
    }
  });
}

}  // namespace
}  // namespace assay
