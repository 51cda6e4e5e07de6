// Malformed FENs, each with exactly the faults it has: what they break is
// section 16.1 of the PGN standard of 1994, or a rule of the game that
// rules/position.h lists. Malformed moves are in bad_move_test.cc.
#include "tests/support/bad_input.h"

#include <string>

#include "assay/notation/fen.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct BadFen : testing_support::Row {
  std::string text;
  std::string faults;
};

constexpr std::size_t kMegabyte = 1 << 20;

// A literal with the NUL bytes it holds.
template <std::size_t kSize>
std::string WithNul(const char (&literal)[kSize]) {
  return std::string(literal, kSize - 1);
}

// Faults of the text as a whole.
const BadFen kWholes[] = {
    {{"Empty"}, "", "fen: empty"},
    {{"OneSpace"}, " ", "fen: empty"},
    {{"OnlyLineEnds"}, "\r\n\n", "fen: empty"},
    {{"OnlyTab"}, "\t", "fen: empty"},
    {{"MegabyteOfSpaces"}, std::string(kMegabyte, ' '), "fen: too long"},
    {{"MegabyteOfKings"}, std::string(kMegabyte, 'k'), "fen: too long"},
    {{"MegabyteOfSlashes"}, std::string(kMegabyte, '/'), "fen: too long"},
    {{"MegabyteOfNuls"}, std::string(kMegabyte, '\0'), "fen: too long"},
    {{"MegabyteAfterASoundFen"},
     "4k3/8/8/8/8/8/8/4K3 w - - 0 1" + std::string(kMegabyte, ' '),
     "fen: too long"},
    {{"OneByteTooLong"}, std::string(kMostFenBytes + 1, '8'), "fen: too long"},
    {{"OneWord"},
     "checkmate",
     "fen: wrong number of fields; placement: wrong number of ranks"},
    {{"OnlyPlacement"}, "4k3/8/8/8/8/8/8/4K3", "fen: wrong number of fields"},
    {{"TwoFields"}, "4k3/8/8/8/8/8/8/4K3 w", "fen: wrong number of fields"},
    {{"ThreeFields"}, "4k3/8/8/8/8/8/8/4K3 w -", "fen: wrong number of fields"},
    {{"FiveFields"},
     "4k3/8/8/8/8/8/8/4K3 w - - 0",
     "fen: wrong number of fields"},
    {{"SevenFields"},
     "4k3/8/8/8/8/8/8/4K3 w - - 0 1 bm",
     "fen: wrong number of fields"},
    {{"TabsForSpaces"},
     "4k3/8/8/8/8/8/8/4K3\tw\t-\t-\t0\t1",
     "fen: wrong number of fields; "
     "placement: unknown character in rank 1"},
    {{"LineEndInside"},
     "4k3/8/8/8/8/8/8/4K3 w - -\n0 1",
     "fen: wrong number of fields; en_passant: not a square"},
    {{"TwoFens"},
     "4k3/8/8/8/8/8/8/4K3 w - - 4k3/8/8/8/8/8/8/4K3 w - -",
     "fen: wrong number of fields"},
    {{"NulAlone"},
     WithNul("\0"),
     "fen: wrong number of fields; placement: wrong number of ranks"},
    {{"NulBeforeASoundFen"},
     WithNul("\0004k3/8/8/8/8/8/8/4K3 w - - 0 1"),
     "placement: unknown character in rank 8"},
    {{"NulInARank"},
     WithNul("4k3/8/8/3\0004/8/8/8/4K3 w - - 0 1"),
     "placement: unknown character in rank 5"},
    {{"NulForASpace"},
     WithNul("4k3/8/8/8/8/8/8/4K3 w -\0- 0 1"),
     "fen: wrong number of fields; castling: unknown character; "
     "en_passant: not a square"},
    {{"NulAtTheEnd"},
     WithNul("4k3/8/8/8/8/8/8/4K3 w - - 0 1\0"),
     "fullmove_number: not a whole number"},
    {{"ByteOrderMark"},
     "\xEF\xBB\xBF"
     "4k3/8/8/8/8/8/8/4K3 w - - 0 1",
     "placement: unknown character in rank 8"},
    {{"InQuotes"},
     "\"4k3/8/8/8/8/8/8/4K3 w - - 0 1\"",
     "placement: unknown character in rank 8; "
     "fullmove_number: not a whole number"},
    {{"EveryFieldWrong"},
     "4k3/8/8/8/8/8/8/4K2 x y z ? !",
     "placement: wrong number of squares in rank 1; "
     "side: unknown side to move; castling: unknown character; "
     "en_passant: not a square; halfmove_clock: not a whole number; "
     "fullmove_number: not a whole number"},
};

// Faults of the placement.
const BadFen kPlacements[] = {
    {{"SevenRanks"},
     "4k3/8/8/8/8/8/4K3 w - - 0 1",
     "placement: wrong number of ranks"},
    {{"NineRanks"},
     "4k3/8/8/8/8/8/8/8/4K3 w - - 0 1",
     "placement: wrong number of ranks"},
    {{"SlashAtTheEnd"},
     "4k3/8/8/8/8/8/8/4K3/ w - - 0 1",
     "placement: wrong number of ranks"},
    {{"SlashAtTheStart"},
     "/4k3/8/8/8/8/8/8/4K3 w - - 0 1",
     "placement: wrong number of ranks"},
    {{"OnlySlashes"},
     "/////// w - - 0 1",
     "placement: wrong number of squares in rank 8; "
     "placement: wrong number of squares in rank 7; "
     "placement: wrong number of squares in rank 6; "
     "placement: wrong number of squares in rank 5; "
     "placement: wrong number of squares in rank 4; "
     "placement: wrong number of squares in rank 3; "
     "placement: wrong number of squares in rank 2; "
     "placement: wrong number of squares in rank 1"},
    {{"EmptyRank"},
     "4k3/8//8/8/8/8/4K3 w - - 0 1",
     "placement: wrong number of squares in rank 6"},
    {{"RankTooShort"},
     "4k3/7/8/8/8/8/8/4K3 w - - 0 1",
     "placement: wrong number of squares in rank 7"},
    {{"RankTooShortByAPiece"},
     "4k3/ppppppp/8/8/8/8/8/4K3 w - - 0 1",
     "placement: wrong number of squares in rank 7"},
    {{"RankTooLongByDigits"},
     "4k3/8/8/8/8/8/8/4K4 w - - 0 1",
     "placement: wrong number of squares in rank 1"},
    {{"RankTooLongByAPiece"},
     "4k3/8/8/8/8/8/8/PPPPKPPPP w - - 0 1",
     "placement: wrong number of squares in rank 1"},
    {{"RankOfSixtyPieces"},
     "4k3/8/8/8/8/8/8/" + std::string(60, 'K') + " w - - 0 1",
     "placement: wrong number of squares in rank 1"},
    {{"DigitNine"},
     "4k3/9/8/8/8/8/8/4K3 w - - 0 1",
     "placement: unknown character in rank 7"},
    {{"DigitZero"},
     "4k3/80/8/8/8/8/8/4K3 w - - 0 1",
     "placement: unknown character in rank 7"},
    {{"TwoDigitsInARow"},
     "4k3/44/8/8/8/8/8/4K3 w - - 0 1",
     "placement: two digits in a row in rank 7"},
    {{"EightOnes"},
     "4k3/11111111/8/8/8/8/8/4K3 w - - 0 1",
     "placement: two digits in a row in rank 7"},
    {{"NegativeDigit"},
     "4k3/-8/8/8/8/8/8/4K3 w - - 0 1",
     "placement: unknown character in rank 7"},
    {{"Dots"},
     "4k3/......../8/8/8/8/8/4K3 w - - 0 1",
     "placement: unknown character in rank 7"},
    {{"UnknownLetter"},
     "4k3/8/8/3S4/8/8/8/4K3 w - - 0 1",
     "placement: unknown character in rank 5"},
    {{"CyrillicKing"},
     "4\xD0\xBA"
     "3/8/8/8/8/8/8/4K3 w - - 0 1",
     "placement: unknown character in rank 8"},
    {{"FaultsInTwoRanks"},
     "4k3/9/8/8/44/8/8/4K3 w - - 0 1",
     "placement: unknown character in rank 7; "
     "placement: two digits in a row in rank 4"},
    {{"NoPieceAtAll"},
     "8/8/8/8/8/8/8/8 w - - 0 1",
     "placement: no king; placement: no king"},
    {{"NoWhiteKing"}, "4k3/8/8/8/8/8/8/8 w - - 0 1", "placement: no king"},
    {{"NoBlackKing"}, "8/8/8/8/8/8/8/4K3 w - - 0 1", "placement: no king"},
    {{"TwoWhiteKings"},
     "4k3/8/8/8/8/8/8/2K1K3 w - - 0 1",
     "placement: too many kings"},
    {{"TwoBlackKings"},
     "k3k3/8/8/8/8/8/8/4K3 w - - 0 1",
     "placement: too many kings"},
    {{"TwoWhiteKingsNoBlackOne"},
     "4K3/8/8/8/8/8/8/4K3 w - - 0 1",
     "placement: too many kings; placement: no king"},
    {{"AdjacentKingsOnARank"},
     "8/8/8/3kK3/8/8/8/8 w - - 0 1",
     "placement: adjacent kings"},
    {{"AdjacentKingsOnADiagonal"},
     "8/8/8/3k4/4K3/8/8/8 b - - 0 1",
     "placement: adjacent kings"},
    {{"WhitePawnOnTheFirst"},
     "4k3/8/8/8/8/8/8/P3K3 w - - 0 1",
     "placement: pawn on a first or last rank"},
    {{"WhitePawnOnTheLast"},
     "P3k3/8/8/8/8/8/8/4K3 w - - 0 1",
     "placement: pawn on a first or last rank"},
    {{"BlackPawnOnItsLast"},
     "4k3/8/8/8/8/8/8/4K2p w - - 0 1",
     "placement: pawn on a first or last rank"},
    {{"BlackPawnOnItsFirst"},
     "4k2p/8/8/8/8/8/8/4K3 w - - 0 1",
     "placement: pawn on a first or last rank"},
    {{"PawnsOfBothSidesOnTheEnds"},
     "P3k2p/8/8/8/8/8/8/4K3 w - - 0 1",
     "placement: pawn on a first or last rank; "
     "placement: pawn on a first or last rank"},
    {{"NineWhitePawns"},
     "4k3/8/8/8/8/P7/PPPPPPPP/4K3 w - - 0 1",
     "placement: too many pawns"},
    {{"NineBlackPawns"},
     "4k3/pppppppp/p7/8/8/8/8/4K3 w - - 0 1",
     "placement: too many pawns"},
    {{"SeventeenWhitePieces"},
     "4k3/8/8/8/8/N7/PPPPPPPP/RNBQKBNR w - - 0 1",
     "placement: too many pieces"},
    {{"SeventeenBlackPieces"},
     "rnbqkbnr/pppppppp/q7/8/8/8/8/4K3 b - - 0 1",
     "placement: too many pieces"},
    {{"SeventeenWithNinePawns"},
     "4k3/8/8/8/8/P7/PPPPPPPP/RNBQKBNR w - - 0 1",
     "placement: too many pawns; placement: too many pieces"},
};

// Faults of the other fields.
const BadFen kFields[] = {
    {{"SideUpperCase"},
     "4k3/8/8/8/8/8/8/4K3 W - - 0 1",
     "side: unknown side to move"},
    {{"SideSpeltOut"},
     "4k3/8/8/8/8/8/8/4K3 white - - 0 1",
     "side: unknown side to move"},
    {{"SideWithATail"},
     "4k3/8/8/8/8/8/8/4K3 w, - - 0 1",
     "side: unknown side to move"},
    {{"SideDash"},
     "4k3/8/8/8/8/8/8/4K3 - - - 0 1",
     "side: unknown side to move"},
    {{"WaitingSideInCheckFromARook"},
     "4k3/8/8/8/8/8/8/K3R3 w - - 0 1",
     "side: the side not to move is in check"},
    {{"WaitingSideInCheckFromABishop"},
     "4k3/8/8/1B6/8/8/8/4K3 w - - 0 1",
     "side: the side not to move is in check"},
    {{"WaitingSideInCheckFromAKnight"},
     "4k3/8/3N4/8/8/8/8/4K3 w - - 0 1",
     "side: the side not to move is in check"},
    {{"WaitingSideInCheckFromAPawn"},
     "4k3/8/8/8/8/8/3p4/4K3 b - - 0 1",
     "side: the side not to move is in check"},
    {{"BothSidesInCheck"},
     "r3k3/8/8/8/8/8/8/K3R3 b - - 0 1",
     "side: the side not to move is in check"},
    {{"CastlingUnknownLetter"},
     "r3k2r/8/8/8/8/8/8/R3K2R w KQkx - 0 1",
     "castling: unknown character"},
    {{"CastlingFileLetters"},
     "r3k2r/8/8/8/8/8/8/R3K2R w HAha - 0 1",
     "castling: unknown character"},
    {{"CastlingTwice"},
     "r3k2r/8/8/8/8/8/8/R3K2R w KKkq - 0 1",
     "castling: letters repeated or out of order"},
    {{"CastlingOutOfOrder"},
     "r3k2r/8/8/8/8/8/8/R3K2R w kqKQ - 0 1",
     "castling: letters repeated or out of order"},
    {{"CastlingWithADash"},
     "r3k2r/8/8/8/8/8/8/R3K2R w KQ- - 0 1",
     "castling: unknown character"},
    {{"CastlingTwoDashes"},
     "r3k2r/8/8/8/8/8/8/R3K2R w -- - 0 1",
     "castling: unknown character"},
    {{"CastlingWithoutTheKing"},
     "4k3/8/8/8/8/8/8/R2K3R w K - 0 1",
     "castling: right without the king in place"},
    {{"CastlingWithoutTheRook"},
     "4k3/8/8/8/8/8/8/R3K3 w K - 0 1",
     "castling: right without the rook in place"},
    {{"CastlingWithTheEnemysRook"},
     "4k3/8/8/8/8/8/8/r3KB2 b Q - 0 1",
     "castling: right without the rook in place; "
     "side: the side not to move is in check"},
    {{"CastlingWithAnotherPiece"},
     "4k2b/8/8/8/8/8/8/4K3 w k - 0 1",
     "castling: right without the rook in place"},
    {{"CastlingBlackKingAway"},
     "r2k3r/8/8/8/8/8/8/4K3 w q - 0 1",
     "castling: right without the king in place"},
    {{"CastlingAllFourOfNothing"},
     "3k4/8/8/8/8/8/8/3K4 w KQkq - 0 1",
     "castling: right without the king in place; "
     "castling: right without the rook in place; "
     "castling: right without the king in place; "
     "castling: right without the rook in place; "
     "castling: right without the king in place; "
     "castling: right without the rook in place; "
     "castling: right without the king in place; "
     "castling: right without the rook in place"},
    {{"PassantNoSuchRank"},
     "4k3/8/8/8/4P3/8/8/4K3 b - e9 0 1",
     "en_passant: not a square"},
    {{"PassantNoSuchFile"},
     "4k3/8/8/8/4P3/8/8/4K3 b - i3 0 1",
     "en_passant: not a square"},
    {{"PassantFileOnly"},
     "4k3/8/8/8/4P3/8/8/4K3 b - e 0 1",
     "en_passant: not a square"},
    {{"PassantUpperCase"},
     "4k3/8/8/8/4P3/8/8/4K3 b - E3 0 1",
     "en_passant: not a square"},
    {{"PassantWithATail"},
     "4k3/8/8/8/4P3/8/8/4K3 b - e3x 0 1",
     "en_passant: not a square"},
    {{"PassantTheRankOfThePawn"},
     "4k3/8/8/8/4P3/8/8/4K3 b - e4 0 1",
     "en_passant: wrong rank"},
    {{"PassantOfTheSideToMove"},
     "4k3/8/8/8/4P3/8/8/4K3 w - e3 0 1",
     "en_passant: wrong rank"},
    {{"PassantOnTheFirstRank"},
     "4k3/8/8/8/4P3/8/8/4K3 b - a1 0 1",
     "en_passant: wrong rank"},
    {{"PassantNoPawn"},
     "4k3/8/8/8/8/8/8/4K3 b - e3 0 1",
     "en_passant: no pawn has just passed it"},
    {{"PassantPawnOfTheWrongSide"},
     "4k3/8/8/8/4p3/8/8/4K3 b - e3 0 1",
     "en_passant: no pawn has just passed it"},
    {{"PassantAnotherPiece"},
     "4k3/8/8/8/4N3/8/8/4K3 b - e3 0 1",
     "en_passant: no pawn has just passed it"},
    {{"PassantSquareTaken"},
     "4k3/8/8/8/4P3/4N3/8/4K3 b - e3 0 1",
     "en_passant: the pawn's way was blocked"},
    {{"PassantStartTaken"},
     "4k3/4p3/8/4p3/8/8/8/4K3 w - e6 0 1",
     "en_passant: the pawn's way was blocked"},
    {{"ClockNegative"},
     "4k3/8/8/8/8/8/8/4K3 w - - -1 1",
     "halfmove_clock: not a whole number"},
    {{"ClockWithASign"},
     "4k3/8/8/8/8/8/8/4K3 w - - +1 1",
     "halfmove_clock: not a whole number"},
    {{"ClockAFraction"},
     "4k3/8/8/8/8/8/8/4K3 w - - 1.5 1",
     "halfmove_clock: not a whole number"},
    {{"ClockHexadecimal"},
     "4k3/8/8/8/8/8/8/4K3 w - - 0x1 1",
     "halfmove_clock: not a whole number"},
    {{"ClockTooLarge"},
     "4k3/8/8/8/8/8/8/4K3 w - - 10001 1",
     "halfmove_clock: out of range"},
    {{"ClockPast16Bits"},
     "4k3/8/8/8/8/8/8/4K3 w - - 65536 1",
     "halfmove_clock: out of range"},
    {{"ClockPast64Bits"},
     "4k3/8/8/8/8/8/8/4K3 w - - 18446744073709551616 1",
     "halfmove_clock: not a whole number"},
    {{"NumberZero"},
     "4k3/8/8/8/8/8/8/4K3 w - - 0 0",
     "fullmove_number: out of range"},
    {{"NumberNegative"},
     "4k3/8/8/8/8/8/8/4K3 w - - 0 -3",
     "fullmove_number: not a whole number"},
    {{"NumberWithATail"},
     "4k3/8/8/8/8/8/8/4K3 w - - 0 1;",
     "fullmove_number: not a whole number"},
    {{"NumberTooLarge"},
     "4k3/8/8/8/8/8/8/4K3 w - - 0 10001",
     "fullmove_number: out of range"},
    {{"NumberPast32Bits"},
     "4k3/8/8/8/8/8/8/4K3 w - - 0 4294967297",
     "fullmove_number: not a whole number"},
    {{"BothCountersWords"},
     "4k3/8/8/8/8/8/8/4K3 w - - no one",
     "halfmove_clock: not a whole number; "
     "fullmove_number: not a whole number"},
};

class BadFens : public ::testing::TestWithParam<BadFen> {};

TEST_P(BadFens, AreRefusedForTheirFaults) {
  const absl::StatusOr<Position> position = PositionFromFen(GetParam().text);
  ASSERT_FALSE(position.ok()) << ::testing::PrintToString(*position);
  testing_support::ExpectFaults(position.status(), GetParam().faults);
}

INSTANTIATE_TEST_SUITE_P(Whole, BadFens, ::testing::ValuesIn(kWholes),
                         testing_support::NameOfRow());
INSTANTIATE_TEST_SUITE_P(Placement, BadFens, ::testing::ValuesIn(kPlacements),
                         testing_support::NameOfRow());
INSTANTIATE_TEST_SUITE_P(Fields, BadFens, ::testing::ValuesIn(kFields),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
