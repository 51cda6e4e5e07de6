// FEN, against the PGN standard of 1994, section 16.1. Malformed texts are the
// matter of bad_input_test.cc.
#include "assay/notation/fen.h"

#include <string>
#include <string_view>
#include <vector>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/random_play.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct Text : testing_support::Row {
  std::string_view read;
  const char* written;
};

constexpr Text kTexts[] = {
    // The five examples that the standard prints. It gives an en passant
    // square after every double step; our writer only where it can be used.
    {{"StandardInitial"},
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1"},
    {{"StandardAfterE4"},
     "rnbqkbnr/pppppppp/8/8/4P3/8/PPPP1PPP/RNBQKBNR b KQkq e3 0 1",
     "rnbqkbnr/pppppppp/8/8/4P3/8/PPPP1PPP/RNBQKBNR b KQkq - 0 1"},
    {{"StandardAfterC5"},
     "rnbqkbnr/pp1ppppp/8/2p5/4P3/8/PPPP1PPP/RNBQKBNR w KQkq c6 0 2",
     "rnbqkbnr/pp1ppppp/8/2p5/4P3/8/PPPP1PPP/RNBQKBNR w KQkq - 0 2"},
    {{"StandardAfterNf3"},
     "rnbqkbnr/pp1ppppp/8/2p5/4P3/5N2/PPPP1PPP/RNBQKB1R b KQkq - 1 2",
     "rnbqkbnr/pp1ppppp/8/2p5/4P3/5N2/PPPP1PPP/RNBQKB1R b KQkq - 1 2"},
    {{"StandardKingsAndPawn"},
     "4k3/8/8/8/8/8/4P3/4K3 w - - 5 39",
     "4k3/8/8/8/8/8/4P3/4K3 w - - 5 39"},
    // What the reader takes besides.
    {{"FourFields"},
     "4k3/8/8/8/8/8/4P3/4K3 b - -",
     "4k3/8/8/8/8/8/4P3/4K3 b - - 0 1"},
    {{"SpacesAround"},
     "  4k3/8/8/8/8/8/4P3/4K3 w - - 5 39  ",
     "4k3/8/8/8/8/8/4P3/4K3 w - - 5 39"},
    {{"SpacesBetween"},
     "4k3/8/8/8/8/8/4P3/4K3  w   -  -  5 39",
     "4k3/8/8/8/8/8/4P3/4K3 w - - 5 39"},
    {{"EndOfLineLeftOn"},
     "4k3/8/8/8/8/8/4P3/4K3 w - - 5 39\r\n",
     "4k3/8/8/8/8/8/4P3/4K3 w - - 5 39"},
    {{"LegalEnPassantIsKept"},
     "4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 9",
     "4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 9"},
    {{"PinnedEnPassantIsDropped"},
     "3k4/8/8/8/3pP3/8/8/3RK3 b - e3 0 9",
     "3k4/8/8/8/3pP3/8/8/3RK3 b - - 0 9"},
    {{"OneRightEach"},
     "r3k2r/8/8/8/8/8/8/R3K2R b Kq - 0 9",
     "r3k2r/8/8/8/8/8/8/R3K2R b Kq - 0 9"},
    {{"LargestCounters"},
     "4k3/8/8/8/8/8/4P3/4K3 w - - 10000 10000",
     "4k3/8/8/8/8/8/4P3/4K3 w - - 10000 10000"},
    // Not asked: whether a game can lead there.
    {{"NineQueensOfASide"},
     "3QQQQQ/3QQQQ1/8/k7/8/8/7K/8 b - - 0 1",
     "3QQQQQ/3QQQQ1/8/k7/8/8/7K/8 b - - 0 1"},
    {{"TenKnights"},
     "4k3/8/nnnnnnnn/8/8/8/nn6/7K w - - 0 1",
     "4k3/8/nnnnnnnn/8/8/8/nn6/7K w - - 0 1"},
    {{"ThreeBishopsOnOneColour"},
     "4k3/8/8/8/8/8/B1B1B3/4K3 w - - 0 1",
     "4k3/8/8/8/8/8/B1B1B3/4K3 w - - 0 1"},
    {{"SixPawnsOnAFile"},
     "4k3/P7/P7/P7/P7/P7/P7/4K3 w - - 0 1",
     "4k3/P7/P7/P7/P7/P7/P7/4K3 w - - 0 1"},
    {{"PromotedBishopsWithAllPawns"},
     "4k3/8/8/8/8/8/PPPPPPPP/BBBBKBBB w - - 0 1",
     "4k3/8/8/8/8/8/PPPPPPPP/BBBBKBBB w - - 0 1"},
    {{"TripleCheck"},
     "4k3/8/3N4/8/B7/8/4R3/4K3 b - - 0 1",
     "4k3/8/3N4/8/B7/8/4R3/4K3 b - - 0 1"},
    {{"KingsWithOneSquareBetween"},
     "8/8/8/3k1K2/8/8/8/8 w - - 0 1",
     "8/8/8/3k1K2/8/8/8/8 w - - 0 1"},
    {{"SixteenPiecesASideAndNoPawn"},
     "rnbqkbnr/nnbbrr2/qq6/8/8/QQ6/NNBBRR2/RNBQKBNR w KQkq - 0 1",
     "rnbqkbnr/nnbbrr2/qq6/8/8/QQ6/NNBBRR2/RNBQKBNR w KQkq - 0 1"},
};

class Texts : public ::testing::TestWithParam<Text> {};

TEST_P(Texts, AreReadAndWritten) {
  const absl::StatusOr<Position> position = PositionFromFen(GetParam().read);
  ASSERT_TRUE(position.ok()) << position.status();
  EXPECT_EQ(ToFen(*position), GetParam().written);
}

INSTANTIATE_TEST_SUITE_P(Fens, Texts, ::testing::ValuesIn(kTexts),
                         testing_support::NameOfRow());

TEST(ParseFen, ReadsEachField) {
  const absl::StatusOr<ParsedPosition> parsed =
      ParseFen("rnbqkbnr/pppppppp/8/8/4P3/8/PPPP1PPP/RNBQK1NR b KQq e3 7 12");
  ASSERT_TRUE(parsed.ok()) << parsed.status();
  EXPECT_EQ(parsed->board[kA1], Piece(Side::kWhite, PieceKind::kRook));
  EXPECT_EQ(parsed->board[kD8], Piece(Side::kBlack, PieceKind::kQueen));
  EXPECT_EQ(parsed->board[kE4], Piece(Side::kWhite, PieceKind::kPawn));
  EXPECT_EQ(parsed->board[kH7], Piece(Side::kBlack, PieceKind::kPawn));
  EXPECT_TRUE(parsed->board[kF1].empty());
  EXPECT_TRUE(parsed->board[kE2].empty());
  EXPECT_EQ(parsed->side_to_move, Side::kBlack);
  EXPECT_TRUE(parsed->castling.Has(Side::kWhite, Wing::kKingside));
  EXPECT_TRUE(parsed->castling.Has(Side::kWhite, Wing::kQueenside));
  EXPECT_FALSE(parsed->castling.Has(Side::kBlack, Wing::kKingside));
  EXPECT_TRUE(parsed->castling.Has(Side::kBlack, Wing::kQueenside));
  EXPECT_EQ(parsed->en_passant, kE3);
  EXPECT_EQ(parsed->halfmove_clock, 7);
  EXPECT_EQ(parsed->fullmove_number, 12);
}

TEST(ParseFen, SaysNothingOfThePosition) {
  EXPECT_TRUE(ParseFen("8/8/8/8/8/8/8/8 w KQkq e4 0 0").ok());
  EXPECT_FALSE(PositionFromFen("8/8/8/8/8/8/8/8 w KQkq e4 0 0").ok());
}

TEST(ParseFen, LimitsTheLength) {
  const std::string fen = "4k3/8/8/8/8/8/4P3/4K3 w - - 5 39";
  EXPECT_TRUE(
      ParseFen(fen + std::string(kMostFenBytes - fen.size(), ' ')).ok());
  EXPECT_FALSE(
      ParseFen(fen + std::string(kMostFenBytes + 1 - fen.size(), ' ')).ok());
}

// The message is for people, the problems for programs: both hold all faults.
TEST(PositionFromFen, ReportsAllFaultsAtOnce) {
  const absl::Status syntax =
      PositionFromFen("4k3/8/8/8/8/8/8/4K2x w KX e9 -1 one").status();
  const std::vector<Problem> expected = {
      {"placement", "unknown character in rank 1", "\"x\"",
       "a letter of PNBRQKpnbrqk or a digit 1 to 8"},
      {"castling", "unknown character", "\"KX\"",
       "\"-\" or letters of KQkq in order"},
      {"en_passant", "not a square", "\"e9\"",
       "\"-\" or a square such as \"e3\""},
      {"halfmove_clock", "not a whole number", "\"-1\"", "digits only"},
      {"fullmove_number", "not a whole number", "\"one\"", "digits only"}};
  EXPECT_THAT(ProblemsOf(syntax), ::testing::ElementsAreArray(expected));
  for (const Problem& problem : expected) {
    EXPECT_THAT(std::string(syntax.message()),
                ::testing::HasSubstr(ToString(problem)));
  }
}

TEST(PositionFromFen, ReportsAllFaultsOfThePositionAtOnce) {
  const absl::Status status =
      PositionFromFen("P3k3/8/8/8/8/8/8/4R2K w K e3 0 0").status();
  const std::vector<Problem> expected = {
      {"placement", "pawn on a first or last rank", "white pawn on a8",
       "pawns on ranks 2 to 7"},
      {"castling", "right without the king in place",
       "K with no white king on e1", "white king on e1"},
      {"castling", "right without the rook in place",
       "K with no white rook on h1", "white rook on h1"},
      {"en_passant", "wrong rank", "e3", "a square on rank 6, White to move"},
      {"fullmove_number", "out of range", "0", "1 to 10000"},
      {"side", "the side not to move is in check",
       "black king on e8 attacked from e1", "that no king can be captured"}};
  EXPECT_THAT(ProblemsOf(status), ::testing::ElementsAreArray(expected));
}

TEST(Fen, OfRandomGamesComesBackTheSame) {
  testing_support::PlayAtRandom(11, 100'000, [](const Position& p, Move) {
    if (::testing::Test::HasFailure()) return;
    const std::string fen = ToFen(p);
    const absl::StatusOr<Position> again = PositionFromFen(fen);
    ASSERT_TRUE(again.ok()) << fen << ' ' << again.status();
    ASSERT_EQ(*again, p);
    ASSERT_EQ(again->hash(), p.hash());
    ASSERT_EQ(ToFen(*again), fen);
    ASSERT_LT(fen.size(), 100U);
  });
}

}  // namespace
}  // namespace assay
