// Claims of weak pawns and of pawns that stand together. Definitions are those
// of the kinds in proto/assay/v1/claim.proto.
#include "gtest/gtest.h"
#include "tests/support/claims.h"

namespace assay {
namespace {

using testing_support::ClaimRow;

constexpr ClaimRow kDoubled[] = {
    {{"TwoOnOneFile"},
     ClaimKind::kDoubled,
     "Kg1 c3 c4 v Kg8",
     "White c3 c4 (2)"},
    {{"SideBySideAreNot"}, ClaimKind::kDoubled, "Kg1 c3 d3 v Kg8", ""},
    {{"ThreeOnTheEdge"},
     ClaimKind::kDoubled,
     "Kg1 a2 a4 a5 v Kg8 a7",
     "White a2 a4 a5 (3)"},
    {{"OnTwoFiles"},
     ClaimKind::kDoubled,
     "Kg1 c2 c3 h2 h4 v Kg8",
     "White c2 c3 (2); White h2 h4 (2)"},
    {{"OfBothSides"},
     ClaimKind::kDoubled,
     "Kg1 e2 e3 v Kg8 e5 e6",
     "White e2 e3 (2); Black e5 e6 (2)"},
    {{"WithAnEnemyPawnBetween"},
     ClaimKind::kDoubled,
     "Kg1 d2 d6 v Kg8 d5",
     "White d2 d6 (2)"},
    {{"OneEachAreNot"}, ClaimKind::kDoubled, "Kg1 d4 v Kg8 d5", ""},
};

constexpr ClaimRow kIsolated[] = {
    {{"NoNeighbours"},
     ClaimKind::kIsolated,
     "Kg1 c2 e2 v Kg8",
     "White c2; White e2"},
    {{"NeighbourFarAhead"}, ClaimKind::kIsolated, "Kg1 c2 d7 v Kg8", ""},
    {{"OnTheEdge"}, ClaimKind::kIsolated, "Kg1 a2 c2 d2 v Kg8", "White a2"},
    {{"EdgesAreNoNeighbours"},
     ClaimKind::kIsolated,
     "Kg1 a4 h4 v Kg8",
     "White a4; White h4"},
    {{"DoubledToo"},
     ClaimKind::kIsolated,
     "Kg1 d3 d4 v Kg8",
     "White d3; White d4"},
    {{"EnemyNeighboursDoNotCount"},
     ClaimKind::kIsolated,
     "Kg1 d4 v Kg8 c5 e5",
     "White d4; Black c5; Black e5"},
};

constexpr ClaimRow kBackward[] = {
    {{"OnAHalfOpenFile"},
     ClaimKind::kBackward,
     "Kg1 e4 v Kg8 d6 e5",
     "Black d6"},
    {{"StopSquareNotAttacked"}, ClaimKind::kBackward, "Kg1 f4 v Kg8 d6 e5", ""},
    {{"NeighbourBesideIt"}, ClaimKind::kBackward, "Kg1 e4 v Kg8 c6 d6 e5", ""},
    {{"IsolatedIsNot"}, ClaimKind::kBackward, "Kg1 e4 v Kg8 d6", ""},
    {{"OnTheEdge"}, ClaimKind::kBackward, "Kg1 b4 v Kg8 a6 b5", "Black a6"},
    {{"RammedOfBothSides"},
     ClaimKind::kBackward,
     "Kg1 d5 e4 v Kg8 d6 e5",
     "White e4; Black d6"},
    {{"TwoBesideOne"},
     ClaimKind::kBackward,
     "Kg1 d4 v Kg8 c6 d5 e6",
     "Black c6; Black e6"},
    {{"AttackedByAPieceAlone"},
     ClaimKind::kBackward,
     "Kh1 Bg2 f4 v Kh8 d6 e5",
     ""},
};

constexpr ClaimRow kHangingPair[] = {
    {{"SideBySide"},
     ClaimKind::kHangingPair,
     "Kg1 a2 c4 d4 f2 v Kg8 a7 b7 e6 f7",
     "White c4 d4"},
    {{"OneRankApart"},
     ClaimKind::kHangingPair,
     "Kg1 a2 c4 d5 f2 v Kg8 a7 b7 e6 f7",
     "White c4 d5"},
    {{"OneOnTheThirdRank"},
     ClaimKind::kHangingPair,
     "Kg1 a2 c3 d4 f2 v Kg8 a7 b7 e6 f7",
     ""},
    {{"NeighbourBesideThem"},
     ClaimKind::kHangingPair,
     "Kg1 c4 d4 e2 v Kg8 a7 b7 e6 f7",
     ""},
    {{"EnemyPawnOnAFile"},
     ClaimKind::kHangingPair,
     "Kg1 a2 c4 d4 f2 v Kg8 b7 d6 f7",
     ""},
    {{"BothPassed"}, ClaimKind::kHangingPair, "Kg1 c4 d4 v Kg8 f7", ""},
    {{"OnePassed"}, ClaimKind::kHangingPair, "Kg1 c4 d4 v Kg8 e7", ""},
    {{"OnTheEdge"}, ClaimKind::kHangingPair, "Kg1 a4 b4 v Kg8 c6", ""},
    {{"NextToTheEdge"},
     ClaimKind::kHangingPair,
     "Kg1 b4 c4 v Kg8 a7 d7",
     "White b4 c4"},
    {{"OneDoubled"}, ClaimKind::kHangingPair, "Kg1 c3 c4 d4 v Kg8 b7 e6", ""},
    {{"OfBothSides"},
     ClaimKind::kHangingPair,
     "Kg1 b4 c4 e2 h2 v Kg8 a7 d7 f5 g5",
     "White b4 c4; Black f5 g5"},
};

constexpr ClaimRow kChainBase[] = {
    {{"GuardsOne"},
     ClaimKind::kChainBase,
     "Kg1 c3 d4 e5 v Kg8",
     "White c3 / d4"},
    {{"GuardsTwo"},
     ClaimKind::kChainBase,
     "Kg1 d3 c4 e4 v Kg8",
     "White d3 / c4 e4"},
    {{"SideBySide"}, ClaimKind::kChainBase, "Kg1 c4 d4 v Kg8", ""},
    {{"OnTheEdge"}, ClaimKind::kChainBase, "Kg1 a2 b3 v Kg8", "White a2 / b3"},
    {{"OfBothSides"},
     ClaimKind::kChainBase,
     "Kg1 c3 d4 v Kg8 d5 e6",
     "White c3 / d4; Black e6 / d5"},
    {{"TwoBasesOfOne"},
     ClaimKind::kChainBase,
     "Kg1 c3 d4 e3 v Kg8",
     "White c3 / d4; White e3 / d4"},
    {{"EnemyPawnIsNotGuarded"}, ClaimKind::kChainBase, "Kg1 c3 v Kg8 d4", ""},
};

constexpr ClaimRow kIslands[] = {
    {{"NoPawns"}, ClaimKind::kIslands, "Kg1 v Kg8", "White; Black"},
    {{"InitialPosition"},
     ClaimKind::kIslands,
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
     "White (1, 1); Black (1, 1)"},
    {{"ThreeAgainstTwo"},
     ClaimKind::kIslands,
     "Kg1 a2 b2 d4 f2 g2 h2 v Kg8 a7 b7 e6 f7 g7 h7",
     "White (3, 2); Black (2, 3)"},
    {{"EdgesAreApart"},
     ClaimKind::kIslands,
     "Kg1 a2 h2 v Kg8",
     "White (2); Black (0, 2)"},
    {{"DoubledAreOne"},
     ClaimKind::kIslands,
     "Kg1 c2 c3 v Kg8 c7 d7",
     "White (1, 1); Black (1, 1)"},
    {{"EveryOtherFile"},
     ClaimKind::kIslands,
     "Kg1 a2 c2 e2 g2 v Kg8 b7",
     "White (4, 1); Black (1, 4)"},
};

constexpr ClaimRow kMajority[] = {
    {{"TwoToOne"},
     ClaimKind::kMajority,
     "Kg1 a2 b2 v Kg8 a7",
     "White a2 b2 (2, 1)"},
    {{"Equal"}, ClaimKind::kMajority, "Kg1 a2 b2 v Kg8 a7 c7", ""},
    {{"InTheCentre"},
     ClaimKind::kMajority,
     "Kg1 d4 e4 v Kg8 e6",
     "White d4 e4 (2, 1)"},
    {{"OfBothSides"},
     ClaimKind::kMajority,
     "Kg1 a2 b2 f2 v Kg8 a7 f7 g7",
     "White a2 b2 (2, 1); Black f7 g7 (2, 1)"},
    {{"CFileIsOfTheWing"},
     ClaimKind::kMajority,
     "Kg1 c4 v Kg8 d5",
     "White c4 (1); Black d5 (1)"},
    {{"FFileIsOfTheWing"},
     ClaimKind::kMajority,
     "Kg1 f4 v Kg8 e5",
     "White f4 (1); Black e5 (1)"},
    {{"DoubledCount"},
     ClaimKind::kMajority,
     "Kg1 c2 c3 v Kg8 c7",
     "White c2 c3 (2, 1)"},
};

constexpr ClaimRow kHole[] = {
    {{"InitialPawns"},
     ClaimKind::kHole,
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
     ""},
    {{"BothNeighboursAdvanced"},
     ClaimKind::kHole,
     "Kg1 a2 b2 c4 d2 e4 f2 g2 h2 v Kg8 a7 b7 c7 d7 e7 f7 g7 h7",
     "White d3; White d4"},
    {{"OneNeighbourOneRankBehind"},
     ClaimKind::kHole,
     "Kg1 a2 b2 c3 d2 e4 f2 g2 h2 v Kg8 a7 b7 c7 d7 e7 f7 g7 h7",
     "White d3"},
    {{"NotBeyondTheFifthRank"},
     ClaimKind::kHole,
     "Kg1 a2 b2 c5 d2 e5 f2 g2 h2 v Kg8 a7 b7 c7 d7 e7 f7 g7 h7",
     "White d3; White d4; White d5"},
    {{"OneNeighbourAtHome"},
     ClaimKind::kHole,
     "Kg1 a2 b2 c4 d2 e2 f2 g2 h2 v Kg8 a7 b7 c7 d7 e7 f7 g7 h7",
     ""},
    {{"EdgeFilesAreLeftOut"},
     ClaimKind::kHole,
     "Kg1 a2 c2 d2 e2 f2 g2 h2 v Kg8 a7 b7 c7 d7 e7 f7 g7 h7",
     ""},
    {{"OfBothSides"},
     ClaimKind::kHole,
     "Kg1 a2 b2 c2 d2 e2 f3 g2 h3 v Kg8 a7 b6 c7 d6 e7 f7 g7 h7",
     "White g3; Black c6"},
};

constexpr ClaimRow kBlockade[] = {
    {{"KnightBeforeAnIsolatedPawn"},
     ClaimKind::kBlockade,
     "Kg1 d4 v Kg8 Nd5 e6",
     "Black d5 / d4"},
    {{"KingBeforeAPassedPawn"},
     ClaimKind::kBlockade,
     "Kg1 e5 v Ke6",
     "Black e6 / e5"},
    {{"BeforeABackwardPawn"},
     ClaimKind::kBlockade,
     "Kg1 Nd5 e4 v Kg8 d6 e5",
     "White d5 / d6"},
    {{"BeforeASoundPawn"},
     ClaimKind::kBlockade,
     "Kg1 c3 d4 v Kg8 Nd5 c6 d7 e6",
     ""},
    {{"PawnsDoNotBlockade"}, ClaimKind::kBlockade, "Kg1 d4 v Kg8 d5", ""},
    {{"OwnPieceInTheWay"}, ClaimKind::kBlockade, "Kg1 Nd5 d4 v Kg8", ""},
    {{"OnTheEdge"}, ClaimKind::kBlockade, "Kg1 a5 v Kg8 Ra6", "Black a6 / a5"},
    {{"OfBothSides"},
     ClaimKind::kBlockade,
     "Kg1 Nh4 d4 v Kg8 Nd5 h5",
     "White h4 / h5; Black d5 / d4"},
};

constexpr ClaimRow kMaterial[] = {
    {{"Knights"},
     ClaimKind::kMaterial,
     "Kg1 Nb1 Nf3 v Kg8 Nb8",
     "White knight b1 f3 / b8 (2, 1); Black knight b8 / b1 f3 (1, 2)",
     PieceKind::kKnight},
    {{"NoQueens"},
     ClaimKind::kMaterial,
     "Kg1 v Kg8",
     "White queen; Black queen",
     PieceKind::kQueen},
    {{"QueenAgainstNone"},
     ClaimKind::kMaterial,
     "Kg1 Qh5 v Kg8",
     "White queen h5 (1); Black queen / h5 (0, 1)",
     PieceKind::kQueen},
    {{"PawnsOnTheEdge"},
     ClaimKind::kMaterial,
     "Kg1 a2 v Kg8 h7",
     "White pawn a2 / h7 (1, 1); Black pawn h7 / a2 (1, 1)",
     PieceKind::kPawn},
    {{"Kings"},
     ClaimKind::kMaterial,
     "Kg1 v Kg8",
     "White king g1 / g8 (1, 1); Black king g8 / g1 (1, 1)",
     PieceKind::kKing},
    {{"RooksOnly"},
     ClaimKind::kMaterial,
     "Kg1 Ra1 Rh1 Bc1 v Kg8 Qd8",
     "White rook a1 h1 (2); Black rook / a1 h1 (0, 2)",
     PieceKind::kRook},
};

class PawnClaims : public ::testing::TestWithParam<ClaimRow> {};

TEST_P(PawnClaims, HoldExactlyWhereDefined) {
  testing_support::ExpectClaims(GetParam());
}

INSTANTIATE_TEST_SUITE_P(Doubled, PawnClaims, ::testing::ValuesIn(kDoubled),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Isolated, PawnClaims, ::testing::ValuesIn(kIsolated),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Backward, PawnClaims, ::testing::ValuesIn(kBackward),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(HangingPair, PawnClaims,
                         ::testing::ValuesIn(kHangingPair),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(ChainBase, PawnClaims, ::testing::ValuesIn(kChainBase),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Islands, PawnClaims, ::testing::ValuesIn(kIslands),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Majority, PawnClaims, ::testing::ValuesIn(kMajority),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Hole, PawnClaims, ::testing::ValuesIn(kHole),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Blockade, PawnClaims, ::testing::ValuesIn(kBlockade),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Material, PawnClaims, ::testing::ValuesIn(kMaterial),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
