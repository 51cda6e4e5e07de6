// Claims of endings and of the side to move.
// FIDE Laws of Chess 5.2.2 (number from memory), as material.
#include "gtest/gtest.h"
#include "tests/support/claims.h"

namespace assay {
namespace {

using testing_support::ClaimRow;

constexpr ClaimRow kInsufficient[] = {
    {{"Kings"}, ClaimKind::kInsufficient, "Kg1 v Kg8", "holds"},
    {{"Bishop"}, ClaimKind::kInsufficient, "Kg1 Bc1 v Kg8", "holds"},
    {{"Knight"}, ClaimKind::kInsufficient, "Kg1 v Kg8 Nb8", "holds"},
    {{"BishopsOfOneColour"},
     ClaimKind::kInsufficient,
     "Kg1 Bc1 v Kg8 Bf8",
     "holds"},
    {{"BishopsOfBothColours"},
     ClaimKind::kInsufficient,
     "Kg1 Bc1 v Kg8 Bc8",
     ""},
    {{"TwoKnights"}, ClaimKind::kInsufficient, "Kg1 Nb1 Nc3 v Kg8", ""},
    {{"Pawn"}, ClaimKind::kInsufficient, "Kg1 a2 v Kg8", ""},
};

constexpr ClaimRow kWrongBishop[] = {
    {{"DarkBishopForTheAFile"},
     ClaimKind::kWrongBishop,
     "Kg1 Bc1 a4 v Kg8",
     "White c1 a4"},
    {{"LightBishopForTheAFile"},
     ClaimKind::kWrongBishop,
     "Kg1 Bf1 a4 v Kg8",
     ""},
    {{"LightBishopForTheHFile"},
     ClaimKind::kWrongBishop,
     "Kg1 Bf1 h4 v Kg8",
     "White f1 h4"},
    {{"TwoPawns"},
     ClaimKind::kWrongBishop,
     "Kg1 Bc1 a4 a5 v Kg8",
     "White c1 a4 a5"},
    {{"PawnsOnBothEdges"}, ClaimKind::kWrongBishop, "Kg1 Bc1 a4 h4 v Kg8", ""},
    {{"NoRookPawn"}, ClaimKind::kWrongBishop, "Kg1 Bc1 b4 v Kg8", ""},
    {{"EnemyPawnLeft"}, ClaimKind::kWrongBishop, "Kg1 Bc1 a4 v Kg8 h7", ""},
    {{"TwoBishops"}, ClaimKind::kWrongBishop, "Kg1 Bc1 Be3 a4 v Kg8", ""},
    // Counting in the square is common practice, no source.
};

constexpr ClaimRow kSquareRule[] = {
    {{"KingTooFar"}, ClaimKind::kSquareRule, "Ka1 h4 v Kc4", "White h4"},
    {{"KingJustInside"}, ClaimKind::kSquareRule, "Ka1 h4 v Kd4", ""},
    {{"OutsideButToMove"},
     ClaimKind::kSquareRule,
     "Ka1 h4 v Kc4, Black to move",
     ""},
    {{"FartherAndToMove"},
     ClaimKind::kSquareRule,
     "Ka1 h4 v Kb4, Black to move",
     "White h4"},
    {{"FromTheSecondRankAsFromTheThird"},
     ClaimKind::kSquareRule,
     "Ka1 h2 v Kb3",
     "White h2"},
    {{"FromTheSecondRankInside"}, ClaimKind::kSquareRule, "Ka1 h2 v Kc3", ""},
    {{"OwnKingInTheWay"}, ClaimKind::kSquareRule, "Kh6 h4 v Kb4", ""},
    {{"AnotherPieceLeft"}, ClaimKind::kSquareRule, "Ka1 h4 v Kb4 Nb8", ""},
    {{"OnTheAFile"}, ClaimKind::kSquareRule, "Kh1 a5 v Kh5", "White a5"},
};

constexpr ClaimRow kOpposition[] = {
    {{"OnAFile"},
     ClaimKind::kOpposition,
     "Ke4 v Ke6, Black to move",
     "White e4 e6"},
    {{"TheOtherToMove"}, ClaimKind::kOpposition, "Ke4 v Ke6", "Black e6 e4"},
    {{"Distant"},
     ClaimKind::kOpposition,
     "Ke2 v Ke8, Black to move",
     "White e2 e8"},
    {{"EvenDistance"}, ClaimKind::kOpposition, "Ke3 v Ke6, Black to move", ""},
    {{"OnADiagonal"},
     ClaimKind::kOpposition,
     "Ke4 v Kg6, Black to move",
     "White e4 g6"},
    {{"OnARank"},
     ClaimKind::kOpposition,
     "Kc4 v Ke4, Black to move",
     "White c4 e4"},
    {{"NotOnALine"}, ClaimKind::kOpposition, "Ke4 v Kf6, Black to move", ""},
    {{"OnTheEdge"},
     ClaimKind::kOpposition,
     "Ka1 v Ka3, Black to move",
     "White a1 a3"},
};

constexpr ClaimRow kToMove[] = {
    {{"White"}, ClaimKind::kToMove, "Kg1 v Kg8", "White"},
    {{"Black"}, ClaimKind::kToMove, "Kg1 v Kg8, Black to move", "Black"},
    {{"InitialPosition"},
     ClaimKind::kToMove,
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
     "White"},
    {{"InCheck"}, ClaimKind::kToMove, "Ke1 v Kg8 Re8", "White"},
    {{"Mated"}, ClaimKind::kToMove, "Kg6 Qg7 v Kg8, Black to move", "Black"},
    {{"Stalemated"},
     ClaimKind::kToMove,
     "Kg6 Qf7 v Kh8, Black to move",
     "Black"},
};

constexpr ClaimRow kRookBehind[] = {
    {{"BehindItsOwnPawn"},
     ClaimKind::kRookBehind,
     "Kg1 Rd1 d5 v Kg8",
     "White d1 / d5"},
    {{"BehindAnEnemyPawn"},
     ClaimKind::kRookBehind,
     "Kg1 Rd8 v Kg7 d3",
     "White d8 / d3"},
    {{"InFrontOfIt"}, ClaimKind::kRookBehind, "Kg1 Rd8 d5 v Kg7", ""},
    {{"SomethingBetween"}, ClaimKind::kRookBehind, "Kg1 Rd1 Nd3 d5 v Kg8", ""},
    {{"NotPassed"}, ClaimKind::kRookBehind, "Kg1 Rd1 d5 v Kg8 e7", ""},
    {{"Queen"}, ClaimKind::kRookBehind, "Kg1 Qd1 d5 v Kg8", ""},
    {{"OnTheEdge"},
     ClaimKind::kRookBehind,
     "Kg1 Ra1 a6 v Kg8",
     "White a1 / a6"},
    {{"OfBothSides"},
     ClaimKind::kRookBehind,
     "Kg1 Rd1 d5 v Kg8 Rh8 h5",
     "White d1 / d5; Black h8 / h5"},
};

constexpr ClaimRow kNoLegalMove[] = {
    {{"Mate"},
     ClaimKind::kNoLegalMove,
     "Kg6 Qg7 v Kg8, Black to move",
     "Black g8"},
    {{"Stalemate"},
     ClaimKind::kNoLegalMove,
     "Kg6 Qf7 v Kh8, Black to move",
     "Black h8"},
    {{"AWayOut"}, ClaimKind::kNoLegalMove, "Kg6 Qe7 v Kg8, Black to move", ""},
    {{"PawnMoveLeft"},
     ClaimKind::kNoLegalMove,
     "Kg6 Qf7 v Kh8 a7, Black to move",
     ""},
    {{"InTheCorner"}, ClaimKind::kNoLegalMove, "Ka1 v Kc2 Qb2", "White a1"},
    {{"TheOtherSideWouldHaveNone"},
     ClaimKind::kNoLegalMove,
     "Kg6 Qf7 v Kh8",
     ""},
};

class EndingClaims : public ::testing::TestWithParam<ClaimRow> {};

TEST_P(EndingClaims, HoldExactlyWhereDefined) {
  testing_support::ExpectClaims(GetParam());
}

INSTANTIATE_TEST_SUITE_P(Insufficient, EndingClaims,
                         ::testing::ValuesIn(kInsufficient),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(WrongBishop, EndingClaims,
                         ::testing::ValuesIn(kWrongBishop),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(SquareRule, EndingClaims,
                         ::testing::ValuesIn(kSquareRule),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Opposition, EndingClaims,
                         ::testing::ValuesIn(kOpposition),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(ToMove, EndingClaims, ::testing::ValuesIn(kToMove),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(RookBehind, EndingClaims,
                         ::testing::ValuesIn(kRookBehind),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(NoLegalMove, EndingClaims,
                         ::testing::ValuesIn(kNoLegalMove),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
