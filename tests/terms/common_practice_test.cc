// What every trainer teaches, asked of the evaluator. The facts are common
// practice, no source; the positions are our own. Each pair differs in the
// feature and as little else as chess allows, and is also tried with the
// colours swapped.
#include "gtest/gtest.h"
#include "tests/support/from_pieces.h"
#include "tests/support/ledgers.h"
#include "tests/support/pairs.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::Pair;
using testing_support::Pairs;
using testing_support::ScoreFor;
using testing_support::SumFor;

// White has two bishops, Black not. The pieces stay on their squares; the d-
// and e-pawns are exchanged, or two rams on files c to f lock the centre.
constexpr Pair kOpenAndClosed[] = {
    {{"BishopsAgainstKnights"},
     "Kg1 Rf1 Bd3 Bd2 a2 b2 c2 f2 g2 h2 v Kg8 Rf8 Nc6 Nf6 a7 b7 c7 f7 g7 h7",
     "Kg1 Rf1 Bd3 Bd2 a2 b2 d4 e3 f4 h2 v Kg8 Rf8 Nc6 Nf6 a7 b7 d5 e6 f5 h7"},
    {{"BishopAndKnightOnTheOtherSide"},
     "Kg1 Qe2 Ra1 Bd3 Bd2 a2 b2 f2 g2 h2 v Kg8 Qe7 Ra8 Bd7 Nc6 a7 b7 f7 g7 h7",
     "Kg1 Qe2 Ra1 Bd3 Bd2 a2 d4 e3 f4 h2 v Kg8 Qe7 Ra8 Bd7 Nc6 a7 d5 e6 f5 "
     "h7"},
    {{"WithAllHeavyPieces"},
     "Kg1 Qd1 Ra1 Re1 Bd3 Be3 a2 b2 c3 f2 g2 h2 v Kg8 Qd8 Ra8 Re8 Nd7 Nf6 a7 "
     "b7 "
     "c6 f7 g7 h7",
     "Kg1 Qd1 Ra1 Re1 Bd3 Be3 a2 b2 c3 d4 f4 h2 v Kg8 Qd8 Ra8 Re8 Nd7 Nf6 a7 "
     "b7 "
     "c6 d5 f5 h7"},
    {{"Ending"},
     "Ke2 Bc2 Bd2 a2 b2 f2 g2 v Ke7 Nc6 Nf6 a7 b7 f7 g7",
     "Ke2 Bc2 Bd2 b4 d4 e3 f4 v Ke7 Nc6 Nf6 b5 d5 e6 f5"},
};

class OpenAndClosed : public Pairs {};

TEST_P(OpenAndClosed, CentreMakesThePairWorthMoreOrLess) {
  ExpectBetter([](const Position& position, Side side) {
    return SumFor(position, side, {TermId::kBishopPair});
  });
}

TEST_P(OpenAndClosed, CentreFavoursBishopsOrKnights) { ExpectBetter(ScoreFor); }

// The pieces and pawns alone, the same ones before and after.
TEST_P(OpenAndClosed, CentreDecidesWhatTheyAreWorth) {
  ExpectBetter([](const Position& position, Side side) {
    const auto worth = [&position](Side of) {
      return SumFor(
          position, of,
          {TermId::kMaterial, TermId::kBishopPair, TermId::kKnightForBishop});
    };
    return worth(side) - worth(Other(side));
  });
}

INSTANTIATE_TEST_SUITE_P(Positions, OpenAndClosed,
                         ::testing::ValuesIn(kOpenAndClosed),
                         testing_support::NameOfRow());

// Both sides' pawns and kings mirror each other; White has two bishops, Black
// two knights, and three or more rams lock the centre, or none is left.
struct LockedCentre : testing_support::Row {
  const char* locked;
  const char* opened;
};

constexpr LockedCentre kLockedCentres[] = {
    {{"ThreeRams"},
     "Kg1 Rb1 Bd2 Be2 a2 c3 d4 e5 f2 h2 v Kg8 Rb8 Nd7 Ne7 a7 c4 d5 e6 f7 h7",
     "Kg1 Rf1 Bd2 Be2 a2 b2 f2 g2 h2 v Kg8 Rf8 Nd7 Nf6 a7 b7 f7 g7 h7"},
    {{"FourRams"},
     "Kg1 Rf1 Bd2 Be2 a2 c4 d5 e4 f3 h2 v Kg8 Rf8 Nd7 Ne7 a7 c5 d6 e5 f4 h7",
     "Kg1 Rb1 Bd2 Be2 a2 b2 f2 g2 h2 v Kg8 Rb8 Nd7 Ne7 a7 b7 f7 g7 h7"},
    {{"FourRamsWithQueens"},
     "Kg1 Qd1 Bd2 Be2 a3 c3 d4 e5 f4 h2 v Kg8 Qd8 Nd7 Ne7 a4 c4 d5 e6 f5 h7",
     "Kg1 Qd1 Bd2 Be2 a2 b2 f2 g2 h2 v Kg8 Qd8 Nd7 Ne7 a7 b7 f7 g7 h7"},
    {{"FourRamsInAnEnding"},
     "Kf2 Bd2 Be2 a3 b4 c3 d4 e5 f4 v Kf7 Nd7 Ne7 a6 b5 c4 d5 e6 f5",
     "Kf2 Bd2 Be2 a3 b4 g2 h2 v Kf7 Nd7 Ne7 a6 b5 g7 h7"},
};

class LockedCentres : public ::testing::TestWithParam<LockedCentre> {};

TEST_P(LockedCentres, SuitKnightsAndOpenOnesBishops) {
  const LockedCentre& row = GetParam();
  const Position locked = testing_support::FromPieces(row.locked);
  const Position opened = testing_support::FromPieces(row.opened);
  EXPECT_LT(ScoreFor(locked, Side::kWhite), 0);
  EXPECT_GT(ScoreFor(opened, Side::kWhite), 0);
  EXPECT_LT(ScoreFor(SwapColours(locked), Side::kBlack), 0);
  EXPECT_GT(ScoreFor(SwapColours(opened), Side::kBlack), 0);
}

INSTANTIATE_TEST_SUITE_P(Positions, LockedCentres,
                         ::testing::ValuesIn(kLockedCentres),
                         testing_support::NameOfRow());

// As many pawns each time.
constexpr Pair kTripled[] = {
    {{"OnTheCFile"},
     "Kg1 Rd1 c3 c4 f2 g2 h2 v Kg8 Rd8 a7 b7 f7 g7 h7",
     "Kg1 Rd1 c3 c4 c5 g2 h2 v Kg8 Rd8 a7 b7 f7 g7 h7"},
    {{"OnTheEdge"},
     "Kg1 Rd1 a3 a4 f2 g2 h2 v Kg8 Rd8 c7 d7 f7 g7 h7",
     "Kg1 Rd1 a2 a3 a4 g2 h2 v Kg8 Rd8 c7 d7 f7 g7 h7"},
    {{"InTheCentreWithQueens"},
     "Kg1 Qd1 Nf3 e3 e4 f2 g2 h2 a2 b2 v Kg8 Qd8 Nf6 a7 b7 c7 d6 e5 f7 g7",
     "Kg1 Qd1 Nf3 e2 e3 e4 g2 h2 a2 b2 v Kg8 Qd8 Nf6 a7 b7 c7 d6 e5 f7 g7"},
};

class Tripled : public Pairs {};

TEST_P(Tripled, PawnsAreWorseThanDoubled) {
  ExpectBetter([](const Position& position, Side side) {
    return SumFor(position, side,
                  {TermId::kDoubledPawns, TermId::kIsolatedPawn});
  });
  ExpectBetter(ScoreFor);
}

INSTANTIATE_TEST_SUITE_P(Positions, Tripled, ::testing::ValuesIn(kTripled),
                         testing_support::NameOfRow());

// The doubled pawns stay where they are; a neighbour moves away.
constexpr Pair kDoubledIsolated[] = {
    {{"OnTheCFile"},
     "Kg1 Rd1 b2 c3 c4 f2 g2 h2 v Kg8 Rd8 a7 b7 e6 f7 g7 h7",
     "Kg1 Rd1 a2 c3 c4 f2 g2 h2 v Kg8 Rd8 a7 b7 e6 f7 g7 h7"},
    {{"OnTheFFile"},
     "Kg1 Qd1 Rd2 a2 b2 c2 f3 f4 g2 v Kc8 Qe7 Rd8 a7 b7 c7 f7 g7 h7",
     "Kg1 Qd1 Rd2 a2 b2 c2 f3 f4 h2 v Kc8 Qe7 Rd8 a7 b7 c7 f7 g7 h7"},
    {{"OnTheEdge"},
     "Kg1 Nd3 a3 a4 b2 f2 g2 h2 v Kg8 Nd6 a7 c7 d7 f7 g7 h7",
     "Kg1 Nd3 a3 a4 c2 f2 g2 h2 v Kg8 Nd6 a7 c7 d7 f7 g7 h7"},
};

class DoubledIsolated : public Pairs {};

TEST_P(DoubledIsolated, PawnsAreWorseThanDoubledWithANeighbour) {
  ExpectBetter([](const Position& position, Side side) {
    return SumFor(position, side, {TermId::kDoubledPawns});
  });
  ExpectBetter(ScoreFor);
}

INSTANTIATE_TEST_SUITE_P(Positions, DoubledIsolated,
                         ::testing::ValuesIn(kDoubledIsolated),
                         testing_support::NameOfRow());

// The f-pawn on its start square, and moved one step before castling.
constexpr Pair kEarlyFPawn[] = {
    {{"OnTheFirstMove"},
     "rnbqkbnr/pppp1ppp/8/4p3/8/4P3/PPPP1PPP/RNBQKBNR w KQkq - 0 2",
     "rnbqkbnr/pppp1ppp/8/4p3/8/5P2/PPPPP1PP/RNBQKBNR w KQkq - 0 2"},
    {{"WithBothCentrePawns"},
     "rnbqkbnr/pp1p1ppp/2p5/4p3/4P3/3P4/PPP2PPP/RNBQKBNR w KQkq - 0 3",
     "rnbqkbnr/pp1p1ppp/2p5/4p3/4P3/5P2/PPPP2PP/RNBQKBNR w KQkq - 0 3"},
    {{"WithTheQueensideOut"},
     "r2qkb1r/pppbpppp/2np1n2/8/3PP3/2N1B3/PPP2PPP/R2QKBNR w KQkq - 0 5",
     "r2qkb1r/pppbpppp/2np1n2/8/3PP3/2N1BP2/PPP3PP/R2QKBNR w KQkq - 0 5"},
};

class EarlyFPawn : public Pairs {};

TEST_P(EarlyFPawn, MoveTakesTheKnightsBestSquare) {
  ExpectBetter([](const Position& position, Side side) {
    return SumFor(position, side, {TermId::kKnightSquareTaken});
  });
}

TEST_P(EarlyFPawn, MoveOpensTheDiagonalToTheKing) {
  ExpectBetter([](const Position& position, Side side) {
    return SumFor(position, side,
                  {TermId::kDiagonalToKing, TermId::kFlankPawnMoved});
  });
}

TEST_P(EarlyFPawn, MoveHasAPriceInAll) {
  ExpectBetter([](const Position& position, Side side) {
    return SumFor(
        position, side,
        {TermId::kKnightSquareTaken, TermId::kDiagonalToKing,
         TermId::kFlankPawnMoved, TermId::kShelter, TermId::kFileToKing});
  });
}

INSTANTIATE_TEST_SUITE_P(Positions, EarlyFPawn,
                         ::testing::ValuesIn(kEarlyFPawn),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
