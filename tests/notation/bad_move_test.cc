// Malformed and illegal moves, each with its fault: what they break is section
// 8.2.3 of the PGN standard of 1994, or the rules.
#include <string>

#include "assay/notation/san.h"
#include "gtest/gtest.h"
#include "tests/support/bad_input.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct BadMove : testing_support::Row {
  const char* fen;
  std::string text;
  const char* faults;
};

constexpr std::size_t kMegabyte = 1 << 20;
constexpr char kNot[] = "move: not a move";
constexpr char kIllegal[] = "move: illegal move";
constexpr char kAmbiguous[] = "move: ambiguous move";

constexpr char kInitial[] =
    "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1";
constexpr char kPromotes[] = "3n4/4P2k/8/8/8/8/8/4K3 w - - 0 1";
constexpr char kCastles[] = "4k3/8/8/8/8/8/8/R3K2R w KQ - 0 1";
constexpr char kTwoKnights[] = "4k3/8/8/8/8/5N2/8/1N2K3 w - - 0 1";

const BadMove kBadMoves[] = {
    {{"Empty"}, kInitial, "", kNot},
    {{"Space"}, kInitial, " ", kNot},
    {{"SpaceBefore"}, kInitial, " e4", kNot},
    {{"SpaceAfter"}, kInitial, "e4 ", kNot},
    {{"Nul"}, kInitial, std::string(1, '\0'), kNot},
    {{"NulAfter"}, kInitial, std::string("e4\0", 3), kNot},
    {{"NulInside"}, kInitial, std::string("e\0004", 3), kNot},
    {{"LineEnd"}, kInitial, "e4\n", kNot},
    {{"MegabyteOfNs"}, kInitial, std::string(kMegabyte, 'N'), kNot},
    {{"MegabyteOfMarks"}, kInitial, "e4" + std::string(kMegabyte, '!'), kNot},
    {{"OnlyMarks"}, kInitial, "!?", kNot},
    {{"OnlyCheckSign"}, kInitial, "+", kNot},
    {{"Word"}, kInitial, "resigns", kNot},
    {{"MoveNumber"}, kInitial, "1.e4", kNot},
    {{"GameResult"}, kInitial, "1-0", kNot},
    {{"FileOnly"}, kInitial, "e", kNot},
    {{"PieceOnly"}, kInitial, "N", kNot},
    {{"PieceAndFile"}, kInitial, "Nf", kNot},
    {{"NoSuchRank"}, kInitial, "e9", kNot},
    {{"RankZero"}, kInitial, "e0", kNot},
    {{"NoSuchFile"}, kInitial, "Ni3", kNot},
    {{"UpperCaseSquare"}, kInitial, "E4", kNot},
    {{"LowerCasePiece"}, kInitial, "nf3", kNot},
    {{"UnknownPiece"}, kInitial, "Sf3", kNot},
    {{"TwoDestinations"}, kInitial, "Nf3f3f3", kNot},
    {{"RankBeforeFile"}, kInitial, "N1gf3", kNot},
    {{"MarksBefore"}, kInitial, "!e4", kNot},
    {{"NotAscii"},
     kInitial,
     "\xE2\x99\x98"
     "f3",
     kNot},
    {{"Pass"}, kInitial, "--", kNot},
    {{"CoordinatesOffTheBoard"}, kInitial, "e2e9", kNot},
    {{"CoordinatesNoSuchPromotion"}, kPromotes, "e7e8x", kNot},
    {{"CoordinatesPromotionToKing"}, kPromotes, "e7e8k", kNot},
    {{"CoordinatesTooLong"}, kPromotes, "e7e8qq", kNot},
    {{"PromotionToKing"}, kPromotes, "e8=K", kNot},
    {{"PromotionToPawn"}, kPromotes, "e8=P", kNot},
    {{"PromotionToNothing"}, kPromotes, "e8=", kNot},
    {{"PromotionOfAKnight"}, kInitial, "Nf3=Q", kNot},
    {{"CastlingFourTimes"}, kCastles, "O-O-O-O", kNot},
    {{"CastlingHalf"}, kCastles, "O-", kNot},
    {{"CastlingMixed"}, kCastles, "O-0", kNot},
    {{"CastlingWithoutDash"}, kCastles, "OO", kNot},
    {{"PawnTooFar"}, kInitial, "e5", kIllegal},
    {{"PawnBackwards"}, "4k3/8/8/8/4P3/8/8/4K3 w - - 0 1", "e3", kIllegal},
    {{"PawnOntoAPiece"}, "4k3/8/8/8/4p3/4P3/8/4K3 w - - 0 1", "e4", kIllegal},
    {{"PawnTakesNothing"}, kInitial, "exd3", kIllegal},
    {{"PawnStepsOverAPiece"},
     "4k3/8/8/8/8/4n3/4P3/6K1 w - - 0 1",
     "e4",
     kIllegal},
    {{"KnightTooFar"}, kInitial, "Nf4", kIllegal},
    {{"BishopThroughAPawn"}, kInitial, "Bc4", kIllegal},
    {{"OwnPieceTaken"}, kInitial, "Nxd2", kIllegal},
    {{"WrongOrigin"}, kInitial, "Nbf3", kIllegal},
    {{"WrongOriginRank"}, kTwoKnights, "N2d2", kIllegal},
    {{"OtherSidesMove"}, kInitial, "e7e5", kIllegal},
    {{"EmptySquareMoved"}, kInitial, "e3e4", kIllegal},
    {{"SameSquare"}, kInitial, "a1a1", kIllegal},
    {{"KingIntoCheck"}, "4k3/8/8/8/8/8/r7/5K2 w - - 0 1", "Ke2", kIllegal},
    {{"PinnedPiece"}, "4r1k1/8/8/8/8/8/4N3/4K3 w - - 0 1", "Nc3", kIllegal},
    {{"CheckNotParried"}, "4r1k1/8/8/8/8/8/8/N3K3 w - - 0 1", "Nb3", kIllegal},
    {{"PromotionNotNamed"}, kPromotes, "e8", kIllegal},
    {{"PromotionNotNamedAsCoordinates"}, kPromotes, "e7e8", kIllegal},
    {{"PromotionTooEarly"}, kInitial, "e4=Q", kIllegal},
    {{"PromotionTooEarlyAsCoordinates"}, kInitial, "e2e4q", kIllegal},
    {{"CastlingBlocked"}, kInitial, "O-O", kIllegal},
    {{"CastlingWithoutTheRight"},
     "4k3/8/8/8/8/8/8/R3K2R w Q - 0 1",
     "O-O",
     kIllegal},
    {{"CastlingOutOfCheck"},
     "4r1k1/8/8/8/8/8/8/R3K2R w KQ - 0 1",
     "O-O",
     kIllegal},
    {{"CastlingThroughCheck"},
     "5rk1/8/8/8/8/8/8/R3K2R w KQ - 0 1",
     "0-0",
     kIllegal},
    {{"CastlingIntoCheck"},
     "2r3k1/8/8/8/8/8/8/R3K2R w KQ - 0 1",
     "O-O-O",
     kIllegal},
    {{"CastlingOverAKnight"},
     "4k3/8/8/8/8/8/8/RN2K3 w Q - 0 1",
     "O-O-O",
     kIllegal},
    {{"CastlingAsAKingsMove"}, kCastles, "Kg1", kIllegal},
    {{"EnPassantTooLate"},
     "4k3/8/8/3pP3/8/8/8/4K3 w - - 0 1",
     "exd6",
     kIllegal},
    {{"AfterMate"}, "R5k1/5ppp/8/8/8/8/8/4K3 b - - 0 1", "Kh8", kIllegal},
    {{"TwoKnightsOneSquare"}, kTwoKnights, "Nd2", kAmbiguous},
    {{"FileIsNotEnough"}, "R7/8/7k/8/8/8/8/R3K3 w - - 0 1", "Raa4", kAmbiguous},
    {{"RankIsNotEnough"},
     "6k1/8/8/8/R6R/8/8/4K3 w - - 0 1",
     "R4d4",
     kAmbiguous},
    {{"PawnCaptureWithoutAFile"},
     "4k3/8/8/3p4/2P1P3/8/8/4K3 w - - 0 1",
     "xd5",
     kAmbiguous},
};

class BadMoves : public ::testing::TestWithParam<BadMove> {};

TEST_P(BadMoves, AreRefusedForTheirFault) {
  const Position position = testing_support::FromFen(GetParam().fen);
  const absl::StatusOr<Move> move = ParseMove(position, GetParam().text);
  ASSERT_FALSE(move.ok()) << ToCoordinates(*move);
  testing_support::ExpectFaults(move.status(), GetParam().faults);
}

INSTANTIATE_TEST_SUITE_P(Moves, BadMoves, ::testing::ValuesIn(kBadMoves),
                         testing_support::NameOfRow());

// What makes these castlings lawful: a rook, unlike the king, may be attacked
// and may pass an attacked square (FIDE Laws 3.8.2, number from memory).
TEST(Castling, OnlyTheKingsWayMustBeSafe) {
  EXPECT_TRUE(
      ParseMove(testing_support::FromFen("1r4k1/8/8/8/8/8/8/R3K3 w Q - 0 1"),
                "O-O-O")
          .ok());
  EXPECT_TRUE(
      ParseMove(testing_support::FromFen("r5k1/8/8/8/8/8/8/R3K3 w Q - 0 1"),
                "O-O-O")
          .ok());
}

}  // namespace
}  // namespace assay
