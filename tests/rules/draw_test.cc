// Mate, stalemate and draws, by the FIDE Laws of Chess (handbook E.01; numbers
// of articles from memory): 5.1.1, 5.2.1, 5.2.2, 9.2, 9.3, 9.6.
#include "assay/rules/draw.h"

#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::FromFen;
using testing_support::MoveOf;

enum class End { kNone, kMate, kStalemate };

struct Ending : testing_support::Row {
  const char* fen;
  End end;
};

// Positions made for this table; the names say what is meant.
constexpr Ending kEndings[] = {
    {{"InitialPosition"},
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq -",
     End::kNone},
    {{"FoolsMate"},
     "rnb1kbnr/pppp1ppp/8/4p3/6Pq/5P2/PPPPP2P/RNBQKBNR w KQkq -",
     End::kMate},
    {{"BackRank"}, "R5k1/5ppp/8/8/8/8/8/4K3 b - -", End::kMate},
    {{"BackRankWithAWayOut"}, "R5k1/5pp1/8/8/8/8/8/4K3 b - -", End::kNone},
    {{"BackRankInterposed"}, "R5k1/5ppp/8/8/8/8/2r5/4K3 b - -", End::kNone},
    {{"SmotheredMate"}, "6rk/5Npp/8/8/8/8/8/4K3 b - -", End::kMate},
    {{"SmotheredButTaken"}, "5brk/5Npp/8/8/8/5q2/8/4K3 b - -", End::kNone},
    {{"DoubleCheckMate"}, "3qkb2/5pp1/5N2/8/8/8/8/4R1K1 b - -", End::kMate},
    {{"SingleCheckIsTaken"}, "3qkb2/5pp1/5N2/8/8/8/8/6K1 b - -", End::kNone},
    {{"PinnedBishopCannotInterpose"},
     "R5k1/5bpp/8/8/2B5/8/8/4K3 b - -",
     End::kMate},
    {{"FreeBishopInterposes"}, "R5k1/5bpp/8/8/8/8/8/4K3 b - -", End::kNone},
    {{"QueenAndKingMate"}, "7k/6Q1/6K1/8/8/8/8/8 b - -", End::kMate},
    {{"UnguardedQueenIsTaken"}, "7k/6Q1/8/6K1/8/8/8/8 b - -", End::kNone},
    {{"EnPassantIsTheOnlyWayOut"},
     "8/8/8/1k6/3Pp3/8/8/4KQ2 b - d3",
     End::kNone},
    {{"QueenStalemates"}, "7k/5Q2/6K1/8/8/8/8/8 b - -", End::kStalemate},
    {{"PawnStalemates"}, "4k3/4P3/4K3/8/8/8/8/8 b - -", End::kStalemate},
    {{"PawnToMoveIsNoStalemate"}, "4k3/4P3/4K3/8/8/7p/8/8 b - -", End::kNone},
    {{"BlockedPawnIsStalemate"},
     "4k3/4P3/4K3/8/8/7p/7P/8 b - -",
     End::kStalemate},
    {{"PinnedKnightIsStalemate"},
     "kn1R4/8/1K6/8/8/8/8/8 b - -",
     End::kStalemate},
    {{"CastlingIsNoEscapeButKingHasMoves"},
     "4k3/8/8/8/8/8/8/R3K2R w KQ -",
     End::kNone},
};

class Endings : public ::testing::TestWithParam<Ending> {};

TEST_P(Endings, AreToldApart) {
  const Position position = FromFen(GetParam().fen);
  EXPECT_EQ(IsCheckmate(position), GetParam().end == End::kMate);
  EXPECT_EQ(IsStalemate(position), GetParam().end == End::kStalemate);
  const Position swapped = SwapColours(position);
  EXPECT_EQ(IsCheckmate(swapped), GetParam().end == End::kMate);
  EXPECT_EQ(IsStalemate(swapped), GetParam().end == End::kStalemate);
}

INSTANTIATE_TEST_SUITE_P(Positions, Endings, ::testing::ValuesIn(kEndings),
                         testing_support::NameOfRow());

struct Material : testing_support::Row {
  const char* fen;
  bool dead;
};

constexpr Material kMaterials[] = {
    {{"BareKings"}, "4k3/8/8/8/8/8/8/4K3 w - -", true},
    {{"Bishop"}, "4k3/8/8/8/8/8/8/4KB2 w - -", true},
    {{"Knight"}, "4k3/8/8/8/8/8/8/4K1N1 w - -", true},
    {{"BishopsOnOneColourOneASide"}, "2b1k3/8/8/8/8/8/8/4KB2 w - -", true},
    {{"BishopsOnOneColourManyASide"}, "2b1k3/5b2/8/8/8/8/8/3BKB2 w - -", true},
    {{"BishopsOnDarkSquares"}, "4kb2/8/8/8/8/8/8/2B1K3 w - -", true},
    {{"BishopsOnOppositeColours"}, "4kb2/8/8/8/8/8/8/4KB2 w - -", false},
    {{"BishopPair"}, "4k3/8/8/8/8/8/8/2B1KB2 w - -", false},
    {{"TwoKnights"}, "4k3/8/8/8/8/8/8/1N2K1N1 w - -", false},
    {{"KnightEach"}, "1n2k3/8/8/8/8/8/8/4K1N1 w - -", false},
    {{"BishopAndKnight"}, "4k3/8/8/8/8/8/8/4KBN1 w - -", false},
    {{"BishopAgainstKnight"}, "1n2k3/8/8/8/8/8/8/4KB2 w - -", false},
    {{"Pawn"}, "4k3/8/8/8/8/8/4P3/4K3 w - -", false},
    {{"Rook"}, "4k3/8/8/8/8/8/8/4K2R w - -", false},
    {{"Queen"}, "3qk3/8/8/8/8/8/8/4K3 w - -", false},
    {{"BishopsOnOneColourAndAPawn"}, "2b1k3/7p/8/8/8/8/8/4KB2 w - -", false},
};

class Materials : public ::testing::TestWithParam<Material> {};

TEST_P(Materials, AreDeadOrNot) {
  const Position position = FromFen(GetParam().fen);
  EXPECT_EQ(IsInsufficientMaterial(position), GetParam().dead);
  EXPECT_EQ(IsInsufficientMaterial(SwapColours(position)), GetParam().dead);
  EXPECT_EQ(IsInsufficientMaterial(MirrorFiles(position)), GetParam().dead);
}

INSTANTIATE_TEST_SUITE_P(Positions, Materials, ::testing::ValuesIn(kMaterials),
                         testing_support::NameOfRow());

// Why the three are not dead: with each of them there is a mate, though none
// can be forced. Checked on the board, not by authority.
constexpr Material kHelpmates[] = {
    {{"TwoKnights"}, "7k/4NN2/7K/8/8/8/8/8 b - -", false},
    {{"KnightEach"}, "6nk/5N2/6K1/8/8/8/8/8 b - -", false},
    {{"BishopsOnOppositeColours"}, "6bk/8/5BK1/8/8/8/8/8 b - -", false},
    {{"BishopAgainstKnight"}, "7k/5KBn/8/8/8/8/8/8 b - -", false},
};

class Helpmates : public ::testing::TestWithParam<Material> {};

TEST_P(Helpmates, ShowThatTheMaterialIsNotDead) {
  const Position position = FromFen(GetParam().fen);
  EXPECT_TRUE(IsCheckmate(position));
  EXPECT_FALSE(IsInsufficientMaterial(position));
}

INSTANTIATE_TEST_SUITE_P(Positions, Helpmates, ::testing::ValuesIn(kHelpmates),
                         testing_support::NameOfRow());

struct Clock : testing_support::Row {
  const char* fen;
  const char* move;
  bool fifty;
  bool seventy_five;
};

constexpr Clock kClocks[] = {
    {{"FortyNineMovesAndAHalf"},
     "6k1/8/8/8/8/8/8/R3K3 w - - 98 90",
     "a1a2",
     false,
     false},
    {{"FiftyMoves"}, "6k1/8/8/8/8/8/8/R3K3 w - - 99 90", "a1a2", true, false},
    {{"FiftyMovesEndingInCheck"},
     "6k1/8/8/8/8/8/8/R3K3 w - - 99 90",
     "a1a8",
     true,
     false},
    {{"FiftyMovesEndingInMate"},
     "6k1/5ppp/8/8/8/8/8/R3K3 w - - 99 90",
     "a1a8",
     false,
     false},
    {{"CaptureOnTheFiftieth"},
     "6k1/8/8/8/8/8/r7/R3K3 w - - 99 90",
     "a1a2",
     false,
     false},
    {{"PawnMoveOnTheFiftieth"},
     "6k1/8/8/8/8/8/P7/R3K3 w - - 99 90",
     "a2a3",
     false,
     false},
    {{"SeventyFourMovesAndAHalf"},
     "6k1/8/8/8/8/8/8/R3K3 w - - 148 120",
     "a1a2",
     true,
     false},
    {{"SeventyFiveMoves"},
     "6k1/8/8/8/8/8/8/R3K3 w - - 149 120",
     "a1a2",
     true,
     true},
    {{"SeventyFiveMovesEndingInMate"},
     "6k1/5ppp/8/8/8/8/8/R3K3 w - - 149 120",
     "a1a8",
     false,
     false},
    {{"SeventyFiveMovesEndingInStalemate"},
     "7k/8/6K1/8/8/8/8/5Q2 w - - 149 120",
     "f1f7",
     true,
     true},
};

class Clocks : public ::testing::TestWithParam<Clock> {};

TEST_P(Clocks, EndTheGameOrNot) {
  const Position before = FromFen(GetParam().fen);
  const Position position = before.After(MoveOf(before, GetParam().move));
  EXPECT_EQ(IsFiftyMoveClaim(position), GetParam().fifty);
  EXPECT_EQ(IsSeventyFiveMoveDraw(position), GetParam().seventy_five);
}

INSTANTIATE_TEST_SUITE_P(Moves, Clocks, ::testing::ValuesIn(kClocks),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
