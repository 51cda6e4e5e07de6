// Claims of bishops, knights, scope and development.
#include "gtest/gtest.h"
#include "tests/support/claims.h"

namespace assay {
namespace {

using testing_support::ClaimRow;

constexpr ClaimRow kBishopPair[] = {
    {{"BothColours"},
     ClaimKind::kBishopPair,
     "Kg1 Bc1 Bf1 v Kg8",
     "White c1 f1"},
    {{"OneColour"}, ClaimKind::kBishopPair, "Kg1 Bc1 Be3 v Kg8", ""},
    {{"One"}, ClaimKind::kBishopPair, "Kg1 Bc1 Nb1 v Kg8", ""},
    {{"Three"},
     ClaimKind::kBishopPair,
     "Kg1 Bc1 Be3 Bf1 v Kg8",
     "White c1 f1 e3"},
    {{"OnTheEdges"},
     ClaimKind::kBishopPair,
     "Kg1 Ba1 Bh1 v Kg8",
     "White a1 h1"},
    {{"OfBothSides"},
     ClaimKind::kBishopPair,
     "Kg1 Bc1 Bf1 v Kg8 Bc8 Bf8",
     "White c1 f1; Black c8 f8"},
};

constexpr ClaimRow kOppositeBishops[] = {
    {{"OneEach"},
     ClaimKind::kOppositeBishops,
     "Kg1 Bc1 v Kg8 Bc8",
     "White c1 / c8; Black c8 / c1"},
    {{"OneColour"}, ClaimKind::kOppositeBishops, "Kg1 Bc1 v Kg8 Bf8", ""},
    {{"TwoAgainstOne"},
     ClaimKind::kOppositeBishops,
     "Kg1 Bc1 Bf1 v Kg8 Bc8",
     ""},
    {{"OneAgainstNone"}, ClaimKind::kOppositeBishops, "Kg1 Bc1 v Kg8 Nb8", ""},
    {{"OtherPiecesStay"},
     ClaimKind::kOppositeBishops,
     "Kg1 Ra1 Bc1 v Kg8 Qd8 Bc8",
     "White c1 / c8; Black c8 / c1"},
    {{"OnTheEdge"},
     ClaimKind::kOppositeBishops,
     "Kg1 Ba1 v Kg8 Ba8",
     "White a1 / a8; Black a8 / a1"},
    // Others are the pawns on its colour, files c to f, whose stop square is
    // taken.
};

constexpr ClaimRow kBadBishop[] = {
    {{"BehindTwoRammedPawns"},
     ClaimKind::kBadBishop,
     "Kg1 d4 e5 v Kg8 Bc8 d5 e6",
     "Black c8 / d5 e6 (2)"},
    {{"OneOfThemFree"}, ClaimKind::kBadBishop, "Kg1 e5 v Kg8 Bc8 d5 e6", ""},
    {{"OfTheOtherColour"},
     ClaimKind::kBadBishop,
     "Kg1 d4 e5 v Kg8 Bf8 d5 e6",
     ""},
    {{"AheadOfThem"}, ClaimKind::kBadBishop, "Kg1 d4 e5 v Kg8 Bg4 d5 e6", ""},
    {{"BesideTheForemost"},
     ClaimKind::kBadBishop,
     "Kg1 d4 e5 v Kg8 Bf5 d5 e6",
     "Black f5 / d5 e6 (2)"},
    {{"StoppedByAnOwnPawn"},
     ClaimKind::kBadBishop,
     "Kg1 d4 v Kg8 Bc8 d5 e5 e6",
     "Black c8 / d5 e6 (2)"},
    {{"PieceOnTheStopSquare"},
     ClaimKind::kBadBishop,
     "Kg1 d4 Ne5 v Kg8 Bc8 d5 e6",
     ""},
    {{"OuterFilesDoNotCount"},
     ClaimKind::kBadBishop,
     "Kg1 b6 g5 v Kg8 Bc8 b7 g6",
     ""},
    {{"OfBothSides"},
     ClaimKind::kBadBishop,
     "Kg1 Bc1 d4 e5 v Kg8 Bc8 d5 e6",
     "White c1 / d4 e5 (2); Black c8 / d5 e6 (2)"},
};

constexpr ClaimRow kKnightRim[] = {
    {{"OnTheAFile"}, ClaimKind::kKnightRim, "Kg1 Na4 v Kg8", "White a4"},
    {{"OnTheHFile"}, ClaimKind::kKnightRim, "Kg1 Nh3 v Kg8", "White h3"},
    {{"NextToIt"}, ClaimKind::kKnightRim, "Kg1 Nb1 v Kg8", ""},
    {{"FirstRankIsNoRim"}, ClaimKind::kKnightRim, "Kg1 Nd1 v Kg8", ""},
    {{"BishopOnTheAFile"}, ClaimKind::kKnightRim, "Kg1 Ba4 v Kg8", ""},
    {{"OfBothSides"},
     ClaimKind::kKnightRim,
     "Kg1 Na3 Nh4 v Kg8 Na6",
     "White a3; White h4; Black a6"},
};

constexpr ClaimRow kOutpost[] = {
    {{"Knight"}, ClaimKind::kOutpost, "Kg1 Nd5 e4 v Kg8 d6 e5", "White d5"},
    {{"Bishop"}, ClaimKind::kOutpost, "Kg1 Bd5 e4 v Kh8 d6 e5", "White d5"},
    {{"PawnCanStillAttackIt"},
     ClaimKind::kOutpost,
     "Kg1 Nd5 e4 v Kg8 c7 d6 e5",
     ""},
    {{"PawnBesideItCannot"},
     ClaimKind::kOutpost,
     "Kg1 Nd5 e4 v Kg8 c5 d6 e5",
     "White d5"},
    {{"NotGuardedByAPawn"}, ClaimKind::kOutpost, "Kg1 Nd5 Rd1 v Kg8 d6 e5", ""},
    {{"Rook"}, ClaimKind::kOutpost, "Kg1 Rd5 e4 v Kg8 d6 e5", ""},
    {{"ThirdRank"}, ClaimKind::kOutpost, "Kg1 Nd3 c2 v Kg8", ""},
    {{"FourthRank"}, ClaimKind::kOutpost, "Kg1 Nd4 c3 v Kg8", "White d4"},
    {{"SixthRank"}, ClaimKind::kOutpost, "Kg1 Nd6 e5 v Kg8", "White d6"},
    {{"SeventhRank"}, ClaimKind::kOutpost, "Kg1 Nd7 e6 v Kg8", ""},
    {{"OnTheEdge"}, ClaimKind::kOutpost, "Kg1 Na5 b4 v Kg8", "White a5"},
    {{"OnTheEdgeAttackable"}, ClaimKind::kOutpost, "Kg1 Na5 b4 v Kg8 b7", ""},
    {{"OfBothSides"},
     ClaimKind::kOutpost,
     "Kg1 Nd5 e4 v Kg8 Nf4 e5",
     "White d5; Black f4"},
};

constexpr ClaimRow kContestable[] = {
    {{"EnemyKnight"},
     ClaimKind::kContestable,
     "Kg1 Nd5 e4 v Kg8 Nb8 e5",
     "White d5 / b8"},
    {{"BishopOfItsColour"},
     ClaimKind::kContestable,
     "Kg1 Nd5 e4 v Kg8 Bc8 e5",
     "White d5 / c8"},
    {{"BishopOfTheOtherColour"},
     ClaimKind::kContestable,
     "Kg1 Nd5 e4 v Kg8 Bf8 e5",
     ""},
    {{"HeavyPiecesDoNot"},
     ClaimKind::kContestable,
     "Kg1 Nd5 e4 v Kg8 Qd8 Ra8 e5",
     ""},
    {{"AllThatCan"},
     ClaimKind::kContestable,
     "Kg1 Nd5 e4 v Kg8 Nb8 Bc8 Bf8 e5",
     "White d5 / b8 c8"},
    {{"NoOutpost"}, ClaimKind::kContestable, "Kg1 Nd5 v Kg8 Nb8 e5", ""},
    {{"OnTheEdge"},
     ClaimKind::kContestable,
     "Kg1 Na5 b4 v Kg8 Nb8",
     "White a5 / b8"},
    {{"OfBothSides"},
     ClaimKind::kContestable,
     "Kg1 Nd5 e4 v Kg8 Nf4 e5",
     "White d5 / f4; Black f4 / d5"},
};

constexpr ClaimRow kScope[] = {
    {{"KnightInTheMiddle"}, ClaimKind::kScope, "Kg1 Nd4 v Kg8", "White d4 (8)"},
    {{"KnightInTheCorner"}, ClaimKind::kScope, "Kg1 Na1 v Kg8", "White a1 (2)"},
    {{"OwnPawnTakesOne"},
     ClaimKind::kScope,
     "Kg1 Nd4 e2 v Kg8",
     "White d4 (7)"},
    {{"EnemyPawnGuardsTwo"},
     ClaimKind::kScope,
     "Kg1 Nd4 v Kg8 d7",
     "White d4 (6)"},
    {{"EnemyPieceMayBeTaken"},
     ClaimKind::kScope,
     "Kg1 Nd4 v Kg8 Rc6",
     "White d4 (8); Black c6 (14)"},
    {{"ShutIn"}, ClaimKind::kScope, "Kg1 Ba1 b2 v Kg8", "White a1"},
    {{"BlockedByAnEnemyPawn"},
     ClaimKind::kScope,
     "Kg1 Rd1 v Kg8 d3",
     "White d1 (7)"},
    {{"OfBothSides"},
     ClaimKind::kScope,
     "Kg1 Bc1 v Kg8 Qd8",
     "White c1 (7); Black d8 (19)"},
    // Rd1: a1 b1 c1 e1 f1 and d2; d3 holds the pawn, which may be taken, but c2
    // and e2, which it guards, are not on its lines.
};

constexpr ClaimRow kSquareTaken[] = {
    {{"PawnOnF3"},
     ClaimKind::kSquareTaken,
     "Ke1 Ng1 f3 v Kg8",
     "White f3 / g1"},
    {{"PawnOnC3"},
     ClaimKind::kSquareTaken,
     "Ke1 Nb1 c3 v Kg8",
     "White c3 / b1"},
    {{"KnightGone"}, ClaimKind::kSquareTaken, "Ke1 Nh3 f3 v Kg8", ""},
    {{"OtherKnight"}, ClaimKind::kSquareTaken, "Ke1 Nb1 f3 v Kg8", ""},
    {{"PawnFurtherOn"}, ClaimKind::kSquareTaken, "Ke1 Ng1 f4 v Kg8", ""},
    {{"PieceOnF3"}, ClaimKind::kSquareTaken, "Ke1 Ng1 Bf3 v Kg8", ""},
    {{"OnBothWings"},
     ClaimKind::kSquareTaken,
     "Ke1 Nb1 Ng1 c3 f3 v Kg8",
     "White c3 / b1; White f3 / g1"},
    {{"OfBothSides"},
     ClaimKind::kSquareTaken,
     "Ke1 Ng1 f3 v Ke8 Ng8 f6",
     "White f3 / g1; Black f6 / g8"},
};

constexpr ClaimRow kUndeveloped[] = {
    {{"InitialPosition"},
     ClaimKind::kUndeveloped,
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
     "White b1 c1 f1 g1 (4); Black b8 c8 f8 g8 (4)"},
    {{"AllOut"}, ClaimKind::kUndeveloped, "Kg1 Nc3 Be3 v Kg8", ""},
    {{"OneAtHome"}, ClaimKind::kUndeveloped, "Ke1 Nb1 v Kg8", "White b1 (1)"},
    {{"OtherKindOnTheSquare"},
     ClaimKind::kUndeveloped,
     "Ke1 Nc1 Bb1 v Kg8",
     ""},
    {{"EnemySquare"}, ClaimKind::kUndeveloped, "Ke1 Nb8 v Kg8", ""},
    {{"RooksAndQueensDoNotCount"},
     ClaimKind::kUndeveloped,
     "Ke1 Ra1 Qd1 v Kg8",
     ""},
    {{"OfBothSides"},
     ClaimKind::kUndeveloped,
     "Ke1 Bf1 v Ke8 Nb8 Bc8",
     "White f1 (1); Black b8 c8 (2)"},
};

class PieceClaims : public ::testing::TestWithParam<ClaimRow> {};

TEST_P(PieceClaims, HoldExactlyWhereDefined) {
  testing_support::ExpectClaims(GetParam());
}

INSTANTIATE_TEST_SUITE_P(BishopPair, PieceClaims,
                         ::testing::ValuesIn(kBishopPair),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(OppositeBishops, PieceClaims,
                         ::testing::ValuesIn(kOppositeBishops),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(BadBishop, PieceClaims,
                         ::testing::ValuesIn(kBadBishop),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(KnightRim, PieceClaims,
                         ::testing::ValuesIn(kKnightRim),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Outpost, PieceClaims, ::testing::ValuesIn(kOutpost),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Contestable, PieceClaims,
                         ::testing::ValuesIn(kContestable),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Scope, PieceClaims, ::testing::ValuesIn(kScope),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(SquareTaken, PieceClaims,
                         ::testing::ValuesIn(kSquareTaken),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Undeveloped, PieceClaims,
                         ::testing::ValuesIn(kUndeveloped),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
