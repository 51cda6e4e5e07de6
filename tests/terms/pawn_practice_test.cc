// What every trainer teaches of weak and of passed pawns, asked of the
// evaluator. The facts are common practice, no source; the positions are our
// own, each also tried with the colours swapped.
#include "gtest/gtest.h"
#include "tests/support/ledgers.h"
#include "tests/support/pairs.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::NameOfRow;
using testing_support::Pair;
using testing_support::Pairs;
using testing_support::ScoreFor;

// White's pawns stay; Black's let the doubled ones be exchanged off, or leave
// their file open to Black's rook.
constexpr Pair kExchangeable[] = {
    {{"OnTheCFile"},
     "Kg1 Rd1 a2 c3 c4 f2 g2 h2 v Kg8 Rd8 b6 c7 e7 f7 g7 h7",
     "Kg1 Rd1 a2 c3 c4 f2 g2 h2 v Kg8 Rd8 a7 b7 e7 f7 g7 h7"},
    {{"OnTheFFileWithQueens"},
     "Kg1 Qd1 Re1 a2 b2 c2 f3 f4 h2 v Kg8 Qd8 Re8 a7 b7 c7 f7 g6 h7",
     "Kg1 Qd1 Re1 a2 b2 c2 f3 f4 h2 v Kg8 Qd8 Re8 a7 b7 c7 d7 g7 h7"},
    {{"WithANeighbour"},
     "Kg1 Rd1 Nd2 b2 c3 c4 f2 g2 v Kg8 Rd8 Ne7 a7 c7 d6 f7 g7",
     "Kg1 Rd1 Nd2 b2 c3 c4 f2 g2 v Kg8 Rd8 Ne7 a7 b6 e6 f7 g7"},
    {{"LeverOnTheBoard"},
     "Kg1 Rf1 Bd2 e3 e4 a2 b2 g2 v Kg8 Rf8 Nc6 a7 b7 d5 e7 g7",
     "Kg1 Rf1 Bd2 e3 e4 a2 b2 g2 v Kg8 Rf8 Nc6 a7 b7 c7 h7 g7"},
};

class Exchangeable : public Pairs {};

TEST_P(Exchangeable, DoubledPawnCostsLessThanOneFixedOnAnOpenFile) {
  ExpectBetterBy({TermId::kDoubledPawns});
}

INSTANTIATE_TEST_SUITE_P(Positions, Exchangeable,
                         ::testing::ValuesIn(kExchangeable), NameOfRow());

// The same pawns; more of Black's pieces can attack the front one than White's
// can defend it, or not so many more.
constexpr Pair kBesieged[] = {
    {{"OnTheCFile"},
     "Kg1 Rf1 c3 c4 f2 g2 h2 v Kg8 Rf8 Nh5 a7 b7 f7 g7 h7",
     "Kg1 Rf1 c3 c4 f2 g2 h2 v Kg8 Rc8 Nd6 a7 b7 f7 g7 h7"},
    {{"OnTheEFile"},
     "Kg1 Rb1 a2 b2 e3 e4 g2 v Kg8 Rb8 Ba5 Nh7 a7 b6 g7 f7",
     "Kg1 Rb1 a2 b2 e3 e4 g2 v Kg8 Re8 Bb7 Nf6 a7 b6 g7 f7"},
    {{"OnTheEdge"},
     "Kg1 Nh3 a3 a4 f2 g2 v Kg8 Rh8 Nh5 f7 g7 c7",
     "Kg1 Nh3 a3 a4 f2 g2 v Kg8 Ra8 Nc5 f7 g7 c7"},
};

class Besieged : public Pairs {};

TEST_P(Besieged, FrontDoubledPawnThatNoPawnCanDefendCostsMore) {
  ExpectBetterBy({TermId::kDoubledPawns});
}

INSTANTIATE_TEST_SUITE_P(Positions, Besieged, ::testing::ValuesIn(kBesieged),
                         NameOfRow());

// Black's piece leaves or takes the square ahead of the isolated pawn.
constexpr Pair kHeld[] = {
    {{"KnightAheadOfTheQueensPawn"},
     "Kg1 Rd1 Nc3 a2 b2 d4 g2 h2 v Kg8 Rf8 Ng6 a7 b7 e6 g7 h7",
     "Kg1 Rd1 Nc3 a2 b2 d4 g2 h2 v Kg8 Rf8 Nd5 a7 b7 e6 g7 h7"},
    {{"BishopAheadOfTheCPawn"},
     "Kg1 Qd1 Ra1 a2 c4 f2 g2 h2 v Kg8 Qd8 Ra8 Bg7 a7 b7 e6 g6 h7",
     "Kg1 Qd1 Ra1 a2 c4 f2 g2 h2 v Kg8 Qd8 Ra8 Bc5 a7 b7 e6 g6 h7"},
    {{"KnightAheadOfTheRooksPawn"},
     "Ke2 Bd3 a4 e4 f2 v Kd7 Nd6 c7 f7",
     "Ke2 Bd3 a4 e4 f2 v Kd7 Na5 c7 f7"},
};

class Held : public Pairs {};

TEST_P(Held, StopSquareMakesAnIsolatedPawnMatterMore) {
  ExpectBetterBy({TermId::kIsolatedPawn});
}

INSTANTIATE_TEST_SUITE_P(Positions, Held, ::testing::ValuesIn(kHeld),
                         NameOfRow());

constexpr Pair kFarther[] = {
    {{"SeventhOverSixth"},
     "Kg1 Ra1 a7 g2 h2 v Kg8 Rb8 f7 g7 h7",
     "Kg1 Ra1 a6 g2 h2 v Kg8 Rb8 f7 g7 h7"},
    {{"SixthOverFourthWithQueens"},
     "Kg1 Qd1 c6 f2 g2 h2 v Kg8 Qe7 f7 g7 h7",
     "Kg1 Qd1 c4 f2 g2 h2 v Kg8 Qe7 f7 g7 h7"},
    {{"FifthOverThirdInAnEnding"},
     "Ke3 Nc3 b5 g3 v Ke6 Nf6 g6 h6",
     "Ke3 Nc3 b3 g3 v Ke6 Nf6 g6 h6"},
};

class Farther : public Pairs {};

TEST_P(Farther, PassedPawnIsWorthMore) {
  ExpectBetterBy({TermId::kPassedPawn});
  ExpectBetter(ScoreFor);
}

INSTANTIATE_TEST_SUITE_P(Positions, Farther, ::testing::ValuesIn(kFarther),
                         NameOfRow());

// Black's piece stands beside the pawn's way, or in it.
constexpr Pair kBlockaded[] = {
    {{"ByAKnight"},
     "Kg1 Rd1 d5 f2 g2 h2 v Kg8 Rf8 Nc6 f7 g7 h7",
     "Kg1 Rd1 d5 f2 g2 h2 v Kg8 Rf8 Nd6 f7 g7 h7"},
    {{"ByTheKing"},
     "Ke4 Bd2 c5 g3 v Kb7 Bf6 g6 h6",
     "Ke4 Bd2 c5 g3 v Kc6 Bf6 g6 h6"},
    {{"ByARookOnTheSeventh"},
     "Kg1 Rb1 b6 f2 g2 v Kg8 Ra7 f7 g7 h7",
     "Kg1 Rb1 b6 f2 g2 v Kg8 Rb7 f7 g7 h7"},
};

class Blockaded : public Pairs {};

TEST_P(Blockaded, PassedPawnIsWorthLess) {
  ExpectBetterBy({TermId::kPassedPawn});
}

INSTANTIATE_TEST_SUITE_P(Positions, Blockaded, ::testing::ValuesIn(kBlockaded),
                         NameOfRow());

// A pawn steps aside, so that it guards the passed pawn no more.
constexpr Pair kProtected[] = {
    {{"OnTheFifth"},
     "Kg1 Re1 c4 d5 g2 h2 v Kg8 Re8 b6 f7 g7 h7",
     "Kg1 Re1 c3 d5 g2 h2 v Kg8 Re8 b6 f7 g7 h7"},
    {{"OnTheSixthWithQueens"},
     "Kg1 Qd1 b5 c6 f2 g2 v Kg8 Qc7 a6 f7 g7 h7",
     "Kg1 Qd1 b3 c6 f2 g2 v Kg8 Qc7 a6 f7 g7 h7"},
    {{"InAnEnding"},
     "Ke3 Nd2 g5 f4 a2 v Ke6 Nd6 a7 b7 c7",
     "Ke3 Nd2 g5 f3 a2 v Ke6 Nd6 a7 b7 c7"},
};

class Protected : public Pairs {};

TEST_P(Protected, PassedPawnIsWorthMore) {
  ExpectBetterBy({TermId::kPassedPawn});
}

INSTANTIATE_TEST_SUITE_P(Positions, Protected, ::testing::ValuesIn(kProtected),
                         NameOfRow());

// Two passed pawns on the same rank, side by side or apart.
constexpr Pair kConnected[] = {
    {{"OnTheFifth"},
     "Kg1 Re1 b5 c5 g2 h2 v Kg8 Re8 f7 g7 h7",
     "Kg1 Re1 a5 c5 g2 h2 v Kg8 Re8 f7 g7 h7"},
    {{"OnTheSixthWithMinorPieces"},
     "Kg1 Bd3 d6 e6 g2 v Kg8 Nf6 a7 g7 h7",
     "Kg1 Bd3 c6 e6 g2 v Kg8 Nf6 a7 g7 h7"},
    {{"OnTheFourthWithQueens"},
     "Kg1 Qd1 b4 c4 f2 g2 v Kg8 Qf8 f7 g7 h7",
     "Kg1 Qd1 a4 c4 f2 g2 v Kg8 Qf8 f7 g7 h7"},
};

class Connected : public Pairs {};

TEST_P(Connected, PassedPawnsAreWorthMoreThanSingleOnes) {
  ExpectBetterBy({TermId::kPassedPawn});
  ExpectBetter(ScoreFor);
}

INSTANTIATE_TEST_SUITE_P(Positions, Connected, ::testing::ValuesIn(kConnected),
                         NameOfRow());

}  // namespace
}  // namespace assay
