// Claims of files, of heavy pieces on them, and of space.
#include "gtest/gtest.h"
#include "tests/support/claims.h"

namespace assay {
namespace {

using testing_support::ClaimRow;

constexpr ClaimRow kOpenFile[] = {
    {{"OneFile"},
     ClaimKind::kOpenFile,
     "Kg1 a2 b2 c2 d2 f2 g2 h2 v Kg8 a7 b7 c7 d7 f7 g7 h7",
     "e-file"},
    {{"NoPawns"},
     ClaimKind::kOpenFile,
     "Kg1 v Kg8",
     "a-file; b-file; c-file; d-file; e-file; f-file; g-file; h-file"},
    {{"HalfOpenIsNot"},
     ClaimKind::kOpenFile,
     "Kg1 a2 b2 c2 d2 f2 g2 h2 v Kg8 a7 b7 c7 d7 e7 f7 g7 h7",
     ""},
    {{"OnTheEdge"},
     ClaimKind::kOpenFile,
     "Kg1 b2 c2 d2 e2 f2 g2 h2 v Kg8 b7 c7 d7 e7 f7 g7 h7",
     "a-file"},
    {{"PiecesDoNotCloseIt"},
     ClaimKind::kOpenFile,
     "Kg1 Re1 a2 b2 c2 d2 f2 g2 h2 v Kg8 Re8 a7 b7 c7 d7 f7 g7 h7",
     "e-file"},
    {{"PawnsOfDifferentSidesClose"},
     ClaimKind::kOpenFile,
     "Kg1 a2 c2 e2 g2 v Kg8 b7 d7 f7 h7",
     ""},
};

constexpr ClaimRow kHalfOpenFile[] = {
    {{"ForEachSideOne"},
     ClaimKind::kHalfOpenFile,
     "Kg1 a2 b2 d4 e3 f2 g2 h2 v Kg8 a7 b7 c6 d5 f7 g7 h7",
     "White c-file; Black e-file"},
    {{"OpenIsNot"}, ClaimKind::kHalfOpenFile, "Kg1 d4 v Kg8 d5", ""},
    {{"OnTheEdge"}, ClaimKind::kHalfOpenFile, "Kg1 v Kg8 a7", "White a-file"},
    {{"BothEdges"},
     ClaimKind::kHalfOpenFile,
     "Kg1 a2 v Kg8 h7",
     "White h-file; Black a-file"},
    {{"DoubledPawns"},
     ClaimKind::kHalfOpenFile,
     "Kg1 c2 c3 v Kg8",
     "Black c-file"},
    {{"OwnPawnOfItClosesIt"}, ClaimKind::kHalfOpenFile, "Kg1 e2 v Kg8 e7", ""},
};

constexpr ClaimRow kRookOnFile[] = {
    {{"RookOnAnOpenFile"},
     ClaimKind::kRookOnFile,
     "Kg1 Re1 d2 v Kg8 d7",
     "White e1"},
    {{"QueenCounts"},
     ClaimKind::kRookOnFile,
     "Kg1 Qe1 d2 v Kg8 d7",
     "White e1"},
    {{"ClosedFile"}, ClaimKind::kRookOnFile, "Kg1 Re1 e2 v Kg8 e7", ""},
    {{"HalfOpenForItsSide"},
     ClaimKind::kRookOnFile,
     "Kg1 Re1 v Kg8 e7",
     "White e1"},
    {{"HalfOpenForTheOtherSide"},
     ClaimKind::kRookOnFile,
     "Kg1 Re1 e2 v Kg8",
     ""},
    {{"BehindAnOwnPiece"},
     ClaimKind::kRookOnFile,
     "Kg1 Re1 Be2 v Kg8",
     "White e1"},
    {{"OnTheEdgesOfBothSides"},
     ClaimKind::kRookOnFile,
     "Kg1 Ra1 v Kg8 Rh8",
     "White a1; Black h8"},
    {{"BishopDoesNot"}, ClaimKind::kRookOnFile, "Kg1 Be1 v Kg8", ""},
};

constexpr ClaimRow kSeventhRank[] = {
    {{"KingOnItsFirstRank"},
     ClaimKind::kSeventhRank,
     "Kg1 Rd7 v Kg8",
     "White d7"},
    {{"EnemyPawnsOnIt"},
     ClaimKind::kSeventhRank,
     "Kg1 Rd7 v Kf6 b7",
     "White d7"},
    {{"NeitherKingNorPawns"}, ClaimKind::kSeventhRank, "Kg1 Rd7 v Kf6 b6", ""},
    {{"OwnPawnOnItDoesNotCount"},
     ClaimKind::kSeventhRank,
     "Kg1 Rd7 h7 v Kf6",
     ""},
    {{"QueenCounts"}, ClaimKind::kSeventhRank, "Kg1 Qd7 v Kh8", "White d7"},
    {{"SixthRank"}, ClaimKind::kSeventhRank, "Kg1 Rd6 v Kg8 b7", ""},
    {{"OnTheEdgesOfBothSides"},
     ClaimKind::kSeventhRank,
     "Kh1 Ra7 v Kg8 Rb2",
     "White a7; Black b2"},
};

constexpr ClaimRow kDoubledRooks[] = {
    {{"OnAnOpenFile"},
     ClaimKind::kDoubledRooks,
     "Kg1 Rd1 Rd2 v Kg8",
     "White d1 d2"},
    {{"FarApart"},
     ClaimKind::kDoubledRooks,
     "Kg1 Rd1 Rd7 v Kh8",
     "White d1 d7"},
    {{"RookAndQueen"}, ClaimKind::kDoubledRooks, "Kg1 Rd1 Qd2 v Kg8", ""},
    {{"APieceBetween"}, ClaimKind::kDoubledRooks, "Kg1 Rd1 Nd2 Rd3 v Kg8", ""},
    {{"OnAClosedFile"}, ClaimKind::kDoubledRooks, "Kg1 Rd1 Rd2 d3 v Kg8", ""},
    {{"OnAHalfOpenFile"},
     ClaimKind::kDoubledRooks,
     "Kg1 Rd1 Rd2 v Kg8 d7",
     "White d1 d2"},
    {{"SideBySide"}, ClaimKind::kDoubledRooks, "Kg1 Rd1 Re1 v Kg8", ""},
    {{"Three"},
     ClaimKind::kDoubledRooks,
     "Kg1 Rd1 Rd3 Rd5 v Kg8",
     "White d1 d3; White d3 d5"},
    {{"OnTheEdgesOfBothSides"},
     ClaimKind::kDoubledRooks,
     "Kg1 Ra1 Ra2 v Kg8 Rh5 Rh6",
     "White a1 a2; Black h5 h6"},
    // Counts are squares from the second rank to the one behind the foremost
    // pawn.
};

constexpr ClaimRow kSpace[] = {
    {{"InitialPosition"},
     ClaimKind::kSpace,
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
     "White; Black"},
    {{"OnePawnOnTheFourth"},
     ClaimKind::kSpace,
     "Kg1 e4 v Kg8 e7",
     "White (2); Black (0, 2)"},
    {{"AttackedByAnEnemyPawn"},
     ClaimKind::kSpace,
     "Kg1 e4 v Kg8 d4",
     "White (1, 2); Black (2, 1)"},
    {{"OwnPawnBehindTakesASquare"},
     ClaimKind::kSpace,
     "Kg1 e2 e5 v Kg8",
     "White (2); Black (0, 2)"},
    {{"PiecesTakeNone"},
     ClaimKind::kSpace,
     "Kg1 Ne3 e4 v Kg8",
     "White (2); Black (0, 2)"},
    {{"OnTheEdge"},
     ClaimKind::kSpace,
     "Kg1 a5 v Kg8 h4",
     "White (3, 3); Black (3, 3)"},
    {{"NoPawns"}, ClaimKind::kSpace, "Kg1 Qd1 v Kg8", "White; Black"},
};

class FileClaims : public ::testing::TestWithParam<ClaimRow> {};

TEST_P(FileClaims, HoldExactlyWhereDefined) {
  testing_support::ExpectClaims(GetParam());
}

INSTANTIATE_TEST_SUITE_P(OpenFile, FileClaims, ::testing::ValuesIn(kOpenFile),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(HalfOpenFile, FileClaims,
                         ::testing::ValuesIn(kHalfOpenFile),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(RookOnFile, FileClaims,
                         ::testing::ValuesIn(kRookOnFile),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(SeventhRank, FileClaims,
                         ::testing::ValuesIn(kSeventhRank),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(DoubledRooks, FileClaims,
                         ::testing::ValuesIn(kDoubledRooks),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Space, FileClaims, ::testing::ValuesIn(kSpace),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
