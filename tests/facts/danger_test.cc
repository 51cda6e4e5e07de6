// Claims of pieces that are loose, hang, are pinned, trapped or chased. Counts
// of HANGING are exchange values: exchange_test.cc has many more.
#include "gtest/gtest.h"
#include "tests/support/claims.h"

namespace assay {
namespace {

using testing_support::ClaimRow;

constexpr ClaimRow kLoose[] = {
    {{"Alone"}, ClaimKind::kLoose, "Kg1 Nd4 v Kg8", "White d4"},
    {{"GuardedByAPawn"}, ClaimKind::kLoose, "Kg1 Nd4 c3 v Kg8", ""},
    {{"GuardedByTheKing"}, ClaimKind::kLoose, "Kg1 Ng2 v Kg8", ""},
    {{"GuardedByAPinnedPiece"},
     ClaimKind::kLoose,
     "Ke1 Ne2 Ng3 v Kg8 Re8",
     "Black e8"},
    {{"PawnsAndKingsAreNot"}, ClaimKind::kLoose, "Kg1 d4 v Kg8", ""},
    {{"OnTheEdge"}, ClaimKind::kLoose, "Kg1 Rh7 v Kc8", "White h7"},
    {{"RooksGuardEachOther"}, ClaimKind::kLoose, "Kg1 Ra1 Ra8 v Kh7", ""},
    {{"APawnBetweenThem"},
     ClaimKind::kLoose,
     "Kg1 Ra1 a4 Ra8 v Kh7",
     "White a1; White a8"},
    {{"OfBothSides"},
     ClaimKind::kLoose,
     "Kg1 Bc4 v Kh8 Nb8",
     "White c4; Black b8"},
};

constexpr ClaimRow kHanging[] = {
    {{"Undefended"},
     ClaimKind::kHanging,
     "Kg1 Nd4 v Kg8 Rd8",
     "White d4 (325)"},
    {{"Defended"}, ClaimKind::kHanging, "Kg1 Nd4 c3 v Kg8 Rd8", ""},
    {{"AttackedByLess"},
     ClaimKind::kHanging,
     "Kg1 Rd4 c3 v Kg8 Bg7",
     "White d4 (175)"},
    {{"Pawn"}, ClaimKind::kHanging, "Kg1 d4 v Kg8 Rd8", "White d4 (100)"},
    {{"PinnedDefender"},
     ClaimKind::kHanging,
     "Ka3 Nd4 e3 v Kg8 Rd8 Rg3",
     "White d4 (325); White e3 (100)"},
    {{"NoneWhileInCheck"}, ClaimKind::kHanging, "Ke1 Na4 v Kg8 Ra8 Re8", ""},
    {{"OfBothSidesRooksOpposed"},
     ClaimKind::kHanging,
     "Kg1 Rd4 Rd1 v Kg8 Rd8 Rd7",
     "White d4 (500); Black d7 (500)"},
    {{"ToAPromotion"},
     ClaimKind::kHanging,
     "Kg1 a7 v Kg6 Nb8",
     "Black b8 (1200)"},
    {{"ToAGuardedKing"}, ClaimKind::kHanging, "Kg1 Ne5 Bb2 v Kd6", ""},
    {{"OnTheEdge"}, ClaimKind::kHanging, "Kg1 Na4 v Kg8 Ra8", "White a4 (325)"},
};

constexpr ClaimRow kPinned[] = {
    {{"ToTheKing"},
     ClaimKind::kPinned,
     "Ke1 Nd2 v Kg8 Bb4",
     "White d2 / b4 e1"},
    {{"TwoBetween"}, ClaimKind::kPinned, "Ke1 Nd2 c3 v Kg8 Bb4", ""},
    {{"RookOnADiagonal"}, ClaimKind::kPinned, "Ke1 Nd2 v Kg8 Rb4", ""},
    {{"ToTheQueen"},
     ClaimKind::kPinned,
     "Kg1 Qd1 Nf3 v Kg8 Bg4",
     "White f3 / g4 d1"},
    {{"ToARookByAQueen"}, ClaimKind::kPinned, "Kg1 Ra1 Na3 v Kg8 Qa8", ""},
    {{"ToARookByABishop"},
     ClaimKind::kPinned,
     "Kf1 Ra1 Nc3 v Kg8 Be5",
     "White c3 / e5 a1"},
    {{"RookBeforeQueenByARook"},
     ClaimKind::kPinned,
     "Kg1 Qd1 Rd4 v Kg8 Rd8",
     "White d4 / d8 d1"},
    {{"RookBeforeRookByABishop"},
     ClaimKind::kPinned,
     "Kf1 Ra1 Rc3 v Kg8 Be5",
     ""},
    {{"QueenBeforeRook"}, ClaimKind::kPinned, "Kg1 Rd1 Qd4 v Kg8 Rd8", ""},
    {{"PawnOnTheEdge"},
     ClaimKind::kPinned,
     "Ka1 a4 v Kg8 Ra8",
     "White a4 / a8 a1"},
    {{"EnemyPieceBetween"}, ClaimKind::kPinned, "Ke1 v Kg8 Re8 Ne5", ""},
    {{"OfBothSides"},
     ClaimKind::kPinned,
     "Ke1 Nd2 Bb5 v Ke8 Bb4 Nd7",
     "White d2 / b4 e1; Black d7 / b5 e8"},
};

constexpr ClaimRow kTrapped[] = {
    {{"BishopBehindAPawn"},
     ClaimKind::kTrapped,
     "Kg1 Ba7 v Kb7 b6 c7",
     "White a7"},
    {{"BishopWithAWayOut"}, ClaimKind::kTrapped, "Kg1 Ba7 v Kb7 c7", ""},
    {{"KnightInTheCorner"}, ClaimKind::kTrapped, "Kg1 Na8 v Kb7", "White a8"},
    {{"KnightTakesItsWorth"}, ClaimKind::kTrapped, "Kg1 Na8 v Kb7 Rc7", ""},
    {{"KnightTakesAKnight"}, ClaimKind::kTrapped, "Kg1 Na8 v Kb7 Nc7", ""},
    {{"RookAttackedByLess"},
     ClaimKind::kTrapped,
     "Kh1 Ra1 Nb1 a2 v Kg8 Bd4, Black to move",
     "White a1"},
    {{"ShutInButNotAttacked"}, ClaimKind::kTrapped, "Kg1 Ra1 Nb1 a2 v Kg8", ""},
    {{"NoneWhileInCheck"}, ClaimKind::kTrapped, "Ke1 Na8 v Kb7 Re8", ""},
    {{"OfBothSides"},
     ClaimKind::kTrapped,
     "Kg2 Na8 v Kb7 Nh1",
     "White a8; Black h1"},
    // After 1.e4 d5 2.exd5 Qxd5 the queen can be attacked by the knight (Nc3)
    // and by the c-pawn (c4, which the bishop guards); a bishop on c4 would
    // hang.
};

constexpr ClaimRow kEarlyQueen[] = {
    {{"ExchangedOnD5"},
     ClaimKind::kEarlyQueen,
     "rnb1kbnr/ppp1pppp/8/3q4/8/8/PPPP1PPP/RNBQKBNR w KQkq - 0 3",
     "Black d5 (2)"},
    {{"WithoutTheKnight"},
     ClaimKind::kEarlyQueen,
     "rnb1kbnr/ppp1pppp/8/3q4/8/8/PPPP1PPP/R1BQKBNR w KQkq - 0 3",
     "Black d5 (1)"},
    {{"AtHome"},
     ClaimKind::kEarlyQueen,
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
     ""},
    {{"OneMinorPieceUndeveloped"},
     ClaimKind::kEarlyQueen,
     "Ke1 Qd3 Nb1 v Kg8 Nb8",
     ""},
    {{"NothingCanChaseIt"},
     ClaimKind::kEarlyQueen,
     "Ke1 Qd3 Nb1 Ng1 v Kg8",
     "White d3"},
    {{"ChaserIsGuarded"},
     ClaimKind::kEarlyQueen,
     "Ke1 Qd4 Nb1 Ng1 v Kg8 Bf8",
     "White d4 (1)"},
    {{"ChaserWouldHang"},
     ClaimKind::kEarlyQueen,
     "Ke1 Qd4 Nb1 Ng1 v Kh5 Bf8",
     "White d4"},
    {{"QueenDoesNotChase"},
     ClaimKind::kEarlyQueen,
     "Ke1 Qd4 Nb1 Ng1 v Kg8 Qh8",
     "White d4"},
    {{"OfBothSides"},
     ClaimKind::kEarlyQueen,
     "Ke1 Qa4 Nb1 Ng1 g2 v Ke7 Qh5 Nb8 Ng8 b7",
     "White a4 (1); Black h5 (1)"},
};

class DangerClaims : public ::testing::TestWithParam<ClaimRow> {};

TEST_P(DangerClaims, HoldExactlyWhereDefined) {
  testing_support::ExpectClaims(GetParam());
}

INSTANTIATE_TEST_SUITE_P(Loose, DangerClaims, ::testing::ValuesIn(kLoose),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Hanging, DangerClaims, ::testing::ValuesIn(kHanging),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Pinned, DangerClaims, ::testing::ValuesIn(kPinned),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(Trapped, DangerClaims, ::testing::ValuesIn(kTrapped),
                         testing_support::NameOfRow());

INSTANTIATE_TEST_SUITE_P(EarlyQueen, DangerClaims,
                         ::testing::ValuesIn(kEarlyQueen),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
