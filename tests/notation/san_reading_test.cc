// Moves as text, read: what the PGN standard of 1994 lets an import take
// besides exact SAN (its 8.2.3), coordinate moves, and how faults differ.
#include <string>
#include <string_view>
#include <vector>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/notation/san.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct Read : testing_support::Row {
  const char* fen;
  const char* text;
  const char* coordinates;
};

constexpr char kInitial[] =
    "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1";
constexpr char kCastles[] = "r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1";
constexpr char kBlackCastles[] = "r3k2r/8/8/8/8/8/8/R3K2R b KQkq - 0 1";
constexpr char kPromotes[] = "3n4/4P2k/8/8/8/8/8/4K3 w - - 0 1";
constexpr char kTwoKnights[] = "4k3/8/8/8/8/5N2/8/1N2K3 w - - 0 1";
constexpr char kThreeQueens[] = "Q7/1p5k/Q1Q5/8/8/8/8/4K3 w - - 0 1";
constexpr char kBishopAndPawn[] = "4k3/8/8/8/8/2p5/1P1B4/4K3 w - - 0 1";

constexpr Read kRead[] = {
    {{"Pawn"}, kInitial, "e4", "e2e4"},
    {{"Knight"}, kInitial, "Nf3", "g1f3"},
    {{"CheckSignTooMany"}, kInitial, "Nf3+", "g1f3"},
    {{"MateSignTooMany"}, kInitial, "Nf3#", "g1f3"},
    {{"CheckSignMissing"}, "4k3/8/8/8/8/8/8/R5K1 w - - 0 1", "Ra8", "a1a8"},
    {{"MarkGood"}, kInitial, "Nf3!", "g1f3"},
    {{"MarkPoor"}, kInitial, "Nf3?", "g1f3"},
    {{"MarkVeryGood"}, kInitial, "Nf3!!", "g1f3"},
    {{"MarkSpeculative"}, kInitial, "Nf3!?", "g1f3"},
    {{"MarkQuestionable"}, kInitial, "Nf3?!", "g1f3"},
    {{"MarkVeryPoor"}, kInitial, "Nf3??", "g1f3"},
    {{"SignAndMark"}, kInitial, "Nf3+!?", "g1f3"},
    {{"FileNotNeeded"}, kInitial, "Ngf3", "g1f3"},
    {{"RankNotNeeded"}, kInitial, "N1f3", "g1f3"},
    {{"SquareNotNeeded"}, kInitial, "Ng1f3", "g1f3"},
    {{"LongForm"}, kInitial, "Ng1-f3", "g1f3"},
    {{"LongFormOfAPawn"}, kInitial, "e2-e4", "e2e4"},
    {{"FileNeeded"}, kTwoKnights, "Nfd2", "f3d2"},
    {{"RankNeeded"}, kTwoKnights, "N1d2", "b1d2"},
    {{"SquareNeeded"}, kThreeQueens, "Qa6xb7#", "a6b7"},
    {{"RankAmongThree"}, kThreeQueens, "Q8xb7", "a8b7"},
    {{"Kingside"}, kCastles, "O-O", "e1g1"},
    {{"Queenside"}, kCastles, "O-O-O", "e1c1"},
    {{"KingsideWithZeros"}, kCastles, "0-0", "e1g1"},
    {{"QueensideWithZeros"}, kCastles, "0-0-0", "e1c1"},
    {{"BlackKingside"}, kBlackCastles, "O-O", "e8g8"},
    {{"BlackQueensideWithZeros"}, kBlackCastles, "0-0-0", "e8c8"},
    {{"CastlingMarked"}, kCastles, "O-O+!", "e1g1"},
    {{"CastlingAsCoordinates"}, kCastles, "e1g1", "e1g1"},
    {{"Promotion"}, kPromotes, "e8=Q", "e7e8q"},
    {{"PromotionWithoutSign"}, kPromotes, "e8Q", "e7e8q"},
    {{"PromotionCapture"}, kPromotes, "exd8=N", "e7d8n"},
    {{"PromotionCaptureWithoutSign"}, kPromotes, "exd8R+", "e7d8r"},
    {{"PromotionAsCoordinates"}, kPromotes, "e7e8b", "e7e8b"},
    {{"PromotionAsCoordinatesUpperCase"}, kPromotes, "e7e8B", "e7e8b"},
    {{"SmallBIsTheFile"}, kBishopAndPawn, "bxc3", "b2c3"},
    {{"CapitalBIsTheBishop"}, kBishopAndPawn, "Bxc3", "d2c3"},
    {{"KnightAsCoordinates"}, kInitial, "g1f3", "g1f3"},
    {{"PawnAsCoordinates"}, kInitial, "e2e4", "e2e4"},
    {{"CoordinatesMarked"}, kInitial, "g1f3!?", "g1f3"},
    {{"EnPassant"}, "4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1", "exd6", "e5d6"},
    {{"EnPassantAsCoordinates"},
     "4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1",
     "e5d6",
     "e5d6"},
};

class ReadMove : public ::testing::TestWithParam<Read> {};

TEST_P(ReadMove, IsFound) {
  const Position position = testing_support::FromFen(GetParam().fen);
  const absl::StatusOr<Move> move = ParseMove(position, GetParam().text);
  ASSERT_TRUE(move.ok()) << move.status();
  EXPECT_EQ(ToCoordinates(*move), GetParam().coordinates);
}

INSTANTIATE_TEST_SUITE_P(Moves, ReadMove, ::testing::ValuesIn(kRead),
                         testing_support::NameOfRow());

TEST(ParseSan, TakesNoCoordinatesOfPieces) {
  const Position position = Position::Initial();
  EXPECT_FALSE(ParseSan(position, "g1f3").ok());
  EXPECT_TRUE(ParseMove(position, "g1f3").ok());
}

TEST(ParseMove, NamesTheCandidatesOfAnAmbiguousMove) {
  const Position position = testing_support::FromFen(kTwoKnights);
  const std::vector<Problem> expected = {
      {"move", "ambiguous move", "\"Nd2\"", "Nbd2 or Nfd2"}};
  EXPECT_EQ(ProblemsOf(ParseMove(position, "Nd2").status()), expected);
  EXPECT_EQ(ProblemsOf(ParseSan(position, "Nd2").status()), expected);
}

TEST(ParseMove, NamesAllCandidatesWithSigns) {
  const Position position = testing_support::FromFen(kThreeQueens);
  const std::vector<Problem> problems =
      ProblemsOf(ParseMove(position, "Qxb7").status());
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].reason, "ambiguous move");
  for (const char* candidate : {"Qa6xb7#", "Q8xb7", "Qcxb7"}) {
    EXPECT_THAT(problems[0].expected, ::testing::HasSubstr(candidate));
  }
}

// A pinned piece is no candidate: the standard's example of 8.2.3 is not
// ambiguous.
TEST(ParseMove, CountsLegalCandidatesOnly) {
  const Position position = testing_support::FromFen(
      "rnbqk1nr/ppp2ppp/4p3/3p4/1b1PP3/2N5/PPP2PPP/R1BQKBNR w KQkq - 2 4");
  const absl::StatusOr<Move> move = ParseMove(position, "Ne2");
  ASSERT_TRUE(move.ok()) << move.status();
  EXPECT_EQ(move->from(), kG1);
  EXPECT_EQ(ProblemsOf(ParseMove(position, "Nce2").status())[0].reason,
            "illegal move");
}

}  // namespace
}  // namespace assay
