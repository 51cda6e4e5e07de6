// Claims of kings: shelter, lines towards them, castling.
#include "gtest/gtest.h"
#include "tests/support/claims.h"

namespace assay {
namespace {

using testing_support::ClaimRow;

constexpr ClaimRow kShelter[] = {
    {{"ThreePawns"},
     ClaimKind::kShelter,
     "Kg1 f2 g2 h2 v Kg8 f7 g7 h7",
     "White f2 g2 h2; Black f7 g7 h7"},
    {{"OneStepTaken"},
     ClaimKind::kShelter,
     "Kg1 f2 g3 h2 v Kg8 f7 g6 h7",
     "White f2 h2 g3; Black g6 f7 h7"},
    {{"TwoStepsTaken"},
     ClaimKind::kShelter,
     "Kg1 f2 g4 h2 v Kg8 f7 g7 h7",
     "White f2 h2 (1); Black f7 g7 h7"},
    {{"OnTheEdge"},
     ClaimKind::kShelter,
     "Kh1 g2 v Kh8",
     "White g2 (1); Black (2)"},
    {{"Bare"}, ClaimKind::kShelter, "Kg1 v Kg8", "White (3); Black (3)"},
    {{"TwoOnOneFile"},
     ClaimKind::kShelter,
     "Kg1 f2 f3 v Kg8 h7",
     "White f2 f3 (2); Black h7 (2)"},
    {{"PawnsBehindTheKing"},
     ClaimKind::kShelter,
     "Kg3 f2 g2 h2 v Kg8 f7 g7 h7",
     "White (3); Black f7 g7 h7"},
    {{"PawnsBesideTheKing"},
     ClaimKind::kShelter,
     "Kg2 f2 h2 g3 v Kg8 f7 g7 h7",
     "White g3 (2); Black f7 g7 h7"},
};

constexpr ClaimRow kFlankPawnMoved[] = {
    {{"FPawn"},
     ClaimKind::kFlankPawnMoved,
     "Kg1 f3 g2 h2 v Kg8",
     "White f3 f2"},
    {{"OnTheOtherWing"}, ClaimKind::kFlankPawnMoved, "Kg1 a3 c4 v Kg8", ""},
    {{"KingOffItsFirstRank"}, ClaimKind::kFlankPawnMoved, "Kg2 f3 v Kg8", ""},
    {{"AnotherPawnAtHome"}, ClaimKind::kFlankPawnMoved, "Kg1 f2 f3 v Kg8", ""},
    {{"KingOnE1"},
     ClaimKind::kFlankPawnMoved,
     "Ke1 h4 a4 v Kg8",
     "White h4 h2"},
    {{"KingOnD1"},
     ClaimKind::kFlankPawnMoved,
     "Kd1 h4 a4 v Kg8",
     "White a4 a2"},
    {{"CentrePawns"}, ClaimKind::kFlankPawnMoved, "Kg1 d4 e4 v Kg8", ""},
    {{"TwoOfOneFile"},
     ClaimKind::kFlankPawnMoved,
     "Kg1 f3 f4 v Kg8",
     "White f3 f2; White f4 f2"},
    {{"OfBothSides"},
     ClaimKind::kFlankPawnMoved,
     "Kg1 g4 v Kc8 b6",
     "White g4 g2; Black b6 b7"},
};

constexpr ClaimRow kDiagonalOpen[] = {
    {{"ToTheEdge"},
     ClaimKind::kDiagonalOpen,
     "Kg1 h2 v Kg8 Qd8",
     "White g1 f2 e3 d4 c5 b6 a7 / d8"},
    {{"BishopOfItsColour"},
     ClaimKind::kDiagonalOpen,
     "Kg1 h2 v Kg8 Bf8",
     "White g1 f2 e3 d4 c5 b6 a7 / f8"},
    {{"BishopOfTheOtherColour"},
     ClaimKind::kDiagonalOpen,
     "Kg1 h2 v Kg8 Bc8",
     ""},
    {{"OneSquareOnly"}, ClaimKind::kDiagonalOpen, "Kg1 e3 h2 v Kg8 Qd8", ""},
    {{"TwoSquares"},
     ClaimKind::kDiagonalOpen,
     "Kg1 d4 h2 v Kg8 Qd8",
     "White g1 f2 e3 / d8"},
    {{"ThroughF2"},
     ClaimKind::kDiagonalOpen,
     "Ke1 d2 v Kg8 Qd8",
     "White e1 f2 g3 h4 / d8"},
    {{"TwoDiagonals"},
     ClaimKind::kDiagonalOpen,
     "Ke1 v Kg8 Qd8",
     "White e1 d2 c3 b4 a5 / d8; White e1 f2 g3 h4 / d8"},
    {{"FromTheCorner"},
     ClaimKind::kDiagonalOpen,
     "Kh1 v Kg8 Qa3",
     "White h1 g2 f3 e4 d5 c6 b7 a8 / a3"},
    {{"NoQueenOrBishop"}, ClaimKind::kDiagonalOpen, "Kg1 h2 v Kg8 Rd8 Nb8", ""},
    {{"OfBothSides"},
     ClaimKind::kDiagonalOpen,
     "Kg1 Qd1 h2 v Kg8 Qd8 h7",
     "White g1 f2 e3 d4 c5 b6 a7 / d8; Black g8 f7 e6 d5 c4 b3 a2 / d1"},
};

constexpr ClaimRow kFileToKing[] = {
    {{"Open"},
     ClaimKind::kFileToKing,
     "Kg1 f2 h2 v Kc8 Rd8 f7 h7",
     "White g-file / d8"},
    {{"HalfOpenForTheOpponent"},
     ClaimKind::kFileToKing,
     "Kg1 f2 g2 h2 v Kc8 Rd8 f7 h7",
     "White g-file / d8"},
    {{"HalfOpenForItsOwnSide"},
     ClaimKind::kFileToKing,
     "Kg1 f2 h2 v Kc8 Rd8 f7 g7 h7",
     ""},
    {{"NoHeavyPiece"}, ClaimKind::kFileToKing, "Kg1 f2 h2 v Kc8 Nd5 f7 h7", ""},
    {{"TwoFilesAway"},
     ClaimKind::kFileToKing,
     "Kg1 f2 g2 h2 v Kg8 Rd8 f7 g7 h7",
     ""},
    {{"OnTheEdge"},
     ClaimKind::kFileToKing,
     "Kh1 g2 v Kc8 Rd8 g7",
     "White h-file / d8"},
    {{"OfBothSides"},
     ClaimKind::kFileToKing,
     "Kg1 Re1 f2 h2 v Kg8 Qd8 f7 h7",
     "White g-file / d8; Black g-file / e1"},
};

constexpr ClaimRow kKingAttackers[] = {
    {{"Queen"},
     ClaimKind::kKingAttackers,
     "Kg1 f2 g2 h2 v Kg8 Qd4",
     "White g1 / d4 (1)"},
    {{"KnightTooFar"}, ClaimKind::kKingAttackers, "Kg1 v Kg8 Nd4", ""},
    {{"Knight"},
     ClaimKind::kKingAttackers,
     "Kg1 v Kg8 Nd3",
     "White g1 / d3 (1)"},
    {{"BlockedLine"}, ClaimKind::kKingAttackers, "Kg1 Nd1 v Kh8 Rc1", ""},
    {{"PawnsDoNotCount"}, ClaimKind::kKingAttackers, "Kg1 v Kg8 h3", ""},
    {{"Two"},
     ClaimKind::kKingAttackers,
     "Kg1 v Kg8 Nd3 Rf8",
     "White g1 / d3 f8 (2)"},
    {{"OnTheEdge"},
     ClaimKind::kKingAttackers,
     "Kh1 v Kc8 Rg8",
     "White h1 / g8 (1)"},
    {{"KingsAreBothPieces"},
     ClaimKind::kKingAttackers,
     "Ke4 v Ke6",
     "White e4 / e6 (1); Black e6 / e4 (1)"},
    {{"OfBothSides"},
     ClaimKind::kKingAttackers,
     "Kg1 Qh4 f2 g2 h2 v Kg8 Qd4 f7 g7 h7",
     "White g1 / d4 (1); Black g8 / h4 (1)"},
};

constexpr ClaimRow kInCheck[] = {
    {{"ByARook"}, ClaimKind::kInCheck, "Ke1 v Kg8 Re8", "White e1 / e8"},
    {{"ByTwo"}, ClaimKind::kInCheck, "Ke1 v Kg8 Re8 Bb4", "White e1 / b4 e8"},
    {{"LineClosed"}, ClaimKind::kInCheck, "Ke1 e2 v Kg8 Re8", ""},
    {{"ByAPawn"}, ClaimKind::kInCheck, "Ke4 v Kg8 d5", "White e4 / d5"},
    {{"OnTheEdge"}, ClaimKind::kInCheck, "Ka1 v Kg8 Nb3", "White a1 / b3"},
    {{"OfBlack"},
     ClaimKind::kInCheck,
     "Kg1 Re1 v Ke8, Black to move",
     "Black e8 / e1"},
};

constexpr ClaimRow kCastled[] = {
    {{"KingsideSquares"}, ClaimKind::kCastled, "Kg1 Rf1 v Ke8", "White g1"},
    {{"RookOutside"}, ClaimKind::kCastled, "Kg1 Rh1 v Ke8", ""},
    {{"QueensideSquares"}, ClaimKind::kCastled, "Kc1 Rd1 v Ke8", "White c1"},
    {{"RookInTheCorner"}, ClaimKind::kCastled, "Kb1 Ra1 v Ke8", ""},
    {{"NextToTheCentre"}, ClaimKind::kCastled, "Kf1 v Ke8", ""},
    {{"SecondRank"}, ClaimKind::kCastled, "Kh2 v Ke8", "White h2"},
    {{"SecondRankRookBesideIt"}, ClaimKind::kCastled, "Kg2 Rh2 v Ke8", ""},
    {{"RookOnAnotherRank"}, ClaimKind::kCastled, "Kg2 Rh1 v Ke8", "White g2"},
    {{"ThirdRank"}, ClaimKind::kCastled, "Kg3 v Ke8", ""},
    {{"OfBothSides"},
     ClaimKind::kCastled,
     "Kg1 v Kb8 Rd8",
     "White g1; Black b8"},
};

constexpr ClaimRow kUncastled[] = {
    {{"RightLeft"},
     ClaimKind::kUncastled,
     "4k3/8/8/8/8/8/8/4K2R w K - 0 1",
     "White e1"},
    {{"NoRightNoQueens"}, ClaimKind::kUncastled, "Ke1 v Kg8", ""},
    {{"BothQueens"}, ClaimKind::kUncastled, "Ke1 Qd1 v Kg8 Qd8", "White e1"},
    {{"OneQueen"}, ClaimKind::kUncastled, "Ke1 Qd1 v Kg8", ""},
    {{"OnF1"}, ClaimKind::kUncastled, "Kf1 Qd1 v Kg8 Qd8", "White f1"},
    {{"OnC1"}, ClaimKind::kUncastled, "Kc1 Qd1 v Kg8 Qd8", ""},
    {{"OnTheSecondRank"}, ClaimKind::kUncastled, "Ke2 Qd1 v Kg8 Qd8", ""},
    {{"OfBothSides"},
     ClaimKind::kUncastled,
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
     "White e1; Black e8"},
};

class KingClaims : public ::testing::TestWithParam<ClaimRow> {};

TEST_P(KingClaims, HoldExactlyWhereDefined) {
  testing_support::ExpectClaims(GetParam());
}

INSTANTIATE_TEST_SUITE_P(Shelter, KingClaims, ::testing::ValuesIn(kShelter),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(FlankPawnMoved, KingClaims,
                         ::testing::ValuesIn(kFlankPawnMoved),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(DiagonalOpen, KingClaims,
                         ::testing::ValuesIn(kDiagonalOpen),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(FileToKing, KingClaims,
                         ::testing::ValuesIn(kFileToKing),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(KingAttackers, KingClaims,
                         ::testing::ValuesIn(kKingAttackers),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(InCheck, KingClaims, ::testing::ValuesIn(kInCheck),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Castled, KingClaims, ::testing::ValuesIn(kCastled),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Uncastled, KingClaims, ::testing::ValuesIn(kUncastled),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
