// What a term's value depends on, and where that ends: positions that differ in
// one thing, and whether one entry's value does. Own reasoning, as the weights
// say (core/assay/terms/weights.h).
#include "gtest/gtest.h"
#include "tests/support/from_pieces.h"
#include "tests/support/ledgers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

enum class Than { kMore, kSame };

struct Bound : testing_support::Row {
  TermId term;
  const char* first;  // White's entry is worth more for White here
  Than than;
  const char* second;  // than here
};

constexpr Bound kBounds[] = {
    // d4 and d5 are the only ram; c4 and e4 are breaks.
    {{"PairGainsByABreak"},
     TermId::kBishopPair,
     "Kg1 Bc1 Bf1 c2 d4 h2 v Kg8 d5 h7",
     Than::kMore,
     "Kg1 Bc1 Bf1 a2 d4 h2 v Kg8 d5 h7"},
    {{"PairGainsByNoMoreBreaksThanRams"},
     TermId::kBishopPair,
     "Kg1 Bc1 Bf1 c2 d4 e2 v Kg8 d5 h7",
     Than::kSame,
     "Kg1 Bc1 Bf1 c2 d4 h2 v Kg8 d5 h7"},
    {{"PairLosesByARam"},
     TermId::kBishopPair,
     "Kg1 Bc1 Bf1 a2 d4 h2 v Kg8 d6 h7",
     Than::kMore,
     "Kg1 Bc1 Bf1 a2 d4 h2 v Kg8 d5 h7"},
    {{"PairLosesByNoRamOnTheEdge"},
     TermId::kBishopPair,
     "Kg1 Bc1 Bf1 a4 d4 h2 v Kg8 a5 h7",
     Than::kSame,
     "Kg1 Bc1 Bf1 a2 d4 h2 v Kg8 a7 h7"},
    {{"PassedPawnLosesByABlockade"},
     TermId::kPassedPawn,
     "Kg1 a4 v Kg8 Nb8",
     Than::kMore,
     "Kg1 a4 v Kg8 Na5"},
    {{"PassedPawnOnTheThirdRankDoesNot"},
     TermId::kPassedPawn,
     "Kg1 a3 v Kg8 Nb8",
     Than::kSame,
     "Kg1 a3 v Kg8 Na4"},
    {{"PassedPawnGainsByAGuard"},
     TermId::kPassedPawn,
     "Kg1 c5 b4 v Kg8 a6 h7",
     Than::kMore,
     "Kg1 c5 b3 v Kg8 a6 h7"},
    {{"PassedPawnGainsByEveryStep"},
     TermId::kPassedPawn,
     "Kg1 a6 v Kg8",
     Than::kMore,
     "Kg1 a5 v Kg8"},
    {{"ShelterMattersMoreAgainstMore"},
     TermId::kShelter,
     "Kg1 Qd1 Ra1 Rf1 Bc1 Bf3 Nb1 Ne2 f2 h2 v "
     "Kg8 Ra8 Rf8 Bc8 Bg7 Nb8 Ne7 Nd7 Nc6 f7 h7",
     Than::kMore,
     "Kg1 Qd1 Ra1 Rf1 Bc1 Bf3 Nb1 Ne2 f2 h2 v "
     "Kg8 Qd8 Ra8 Rf8 Bc8 Bg7 Nb8 Ne7 f7 h7"},
    {{"ShelterMattersNoMoreBeyondAFullForce"},
     TermId::kShelter,
     "Kg1 Qd1 Ra1 Rf1 Bc1 Bf3 Nb1 Ne2 f2 h2 v "
     "Kg8 Qd8 Qd7 Ra8 Rf8 Bc8 Bg7 Nb8 Ne7 f7 h7",
     Than::kSame,
     "Kg1 Qd1 Ra1 Rf1 Bc1 Bf3 Nb1 Ne2 f2 h2 v "
     "Kg8 Qd8 Ra8 Rf8 Bc8 Bg7 Nb8 Ne7 f7 h7"},
    {{"SpaceIsWorthMoreWithMoreMinorPieces"},
     TermId::kSpace,
     "Kg1 Nb1 Nd2 c4 d4 e4 v Kg8 Nb8 Nf6 c7 d7 e7",
     Than::kMore,
     "Kg1 Nb1 c4 d4 e4 v Kg8 Nb8 c7 d7 e7"},
    {{"IsolatedPawnIsWorseWhereRooksSeeIt"},
     TermId::kIsolatedPawn,
     "Kg1 d4 v Kg8 d7 c7 e7",
     Than::kMore,
     "Kg1 d4 v Kg8 b7 c7 e7"},
    {{"BackwardPawnIsWorseWhereRooksSeeIt"},
     TermId::kBackwardPawn,
     "Kg1 d3 e4 v Kg8 c5 d6 e5",
     Than::kMore,
     "Kg1 d3 e4 v Kg8 c5 e5 f6"},
    {{"DoubledPawnsAreLessBadWithABreak"},
     TermId::kDoubledPawns,
     "Kg1 b2 c3 c4 v Kg8 d6 e7 h7",
     Than::kMore,
     "Kg1 b2 c3 c4 v Kg8 e6 e7 h7"},
};

class Bounds : public ::testing::TestWithParam<Bound> {};

TEST_P(Bounds, AreKept) {
  const Bound& row = GetParam();
  const Position first = testing_support::FromPieces(row.first);
  const Position second = testing_support::FromPieces(row.second);
  const auto value = [&row](const Position& position, Side side) {
    return testing_support::SumFor(position, side, {row.term});
  };
  const Centipawns more = value(first, Side::kWhite);
  const Centipawns less = value(second, Side::kWhite);
  EXPECT_NE(less, 0) << "nothing is compared";
  if (row.than == Than::kMore) {
    EXPECT_GT(more, less);
  } else {
    EXPECT_EQ(more, less);
  }
  EXPECT_EQ(value(SwapColours(first), Side::kBlack), more);
  EXPECT_EQ(value(SwapColours(second), Side::kBlack), less);
}

INSTANTIATE_TEST_SUITE_P(Positions, Bounds, ::testing::ValuesIn(kBounds),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
