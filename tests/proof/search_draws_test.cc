// Draws in the search: the clocks of the Laws, repetition, stalemate. Positions
// are our own. FIDE Laws of Chess 9.3 (fifty moves, on claim), 9.6.2
// (seventy-five moves), both after a mate; numbers from memory.
#include <gtest/gtest.h>

#include <set>

#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "assay/proof/search.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "assay/terms/ledger.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::FromFen;

SearchResult Searched(const Position& position) {
  SearchLimits limits;
  limits.nodes = 50000;
  return Search(position, Weights(), limits);
}

enum class Expected { kDraw, kWhiteIsWinning, kBlackIsWinning, kWhiteMates };

struct Clock : testing_support::Row {
  const char* fen;
  Expected expected;
  int mate_in = 0;
};

// K+R v K, and a mate in two of it by Kg6 or Kf7.
constexpr Clock kClocks[] = {
    {{"AheadButTheOtherSideClaims"},
     "8/8/8/4k3/8/8/8/R3K3 w - - 100 120",
     Expected::kDraw},
    {{"BehindAndClaims"},
     "8/8/8/4k3/8/8/8/R3K3 b - - 100 120",
     Expected::kDraw},
    {{"BehindAndClaimsWithTheMove"},
     "8/8/8/4k3/8/8/8/R3K3 b - - 99 120",
     Expected::kDraw},
    {{"AheadWithTimeLeft"},
     "8/8/8/4k3/8/8/8/R3K3 w - - 60 120",
     Expected::kWhiteIsWinning},
    {{"MateComesBeforeTheClaim"},
     "7k/8/6K1/8/8/8/8/R7 w - - 100 120",
     Expected::kWhiteMates,
     1},
    {{"MateOnTheFiftiethMove"},
     "7k/8/6K1/8/8/8/8/R7 w - - 99 120",
     Expected::kWhiteMates,
     1},
    {{"MateInTwoOnTheFiftiethMove"},
     "7k/8/5K2/8/8/8/8/R7 w - - 97 120",
     Expected::kWhiteMates,
     2},
    {{"MateInTwoAPlyTooLate"},
     "7k/8/5K2/8/8/8/8/R7 w - - 98 120",
     Expected::kDraw},
    {{"PawnMoveStartsAnew"},
     "8/P6k/8/8/8/8/8/K7 w - - 100 120",
     Expected::kWhiteIsWinning},
    // The only move takes a rook, and loses to the other.
    {{"MustTakeButMayClaim"},
     "6k1/8/8/8/8/8/3r4/6rK w - - 100 120",
     Expected::kDraw},
    {{"MustTakeAndMayNotClaim"},
     "6k1/8/8/8/8/8/3r4/6rK w - - 99 120",
     Expected::kBlackIsWinning},
    {{"MateOnTheSeventyFifthMove"},
     "7k/8/6K1/8/8/8/8/R7 w - - 149 120",
     Expected::kWhiteMates,
     1},
    {{"NoMateOnTheSeventyFifthMove"},
     "7k/8/5K2/8/8/8/8/R7 w - - 149 120",
     Expected::kDraw},
};

class Clocks : public ::testing::TestWithParam<Clock> {};

TEST_P(Clocks, AreObeyed) {
  const SearchResult result = Searched(FromFen(GetParam().fen));
  EXPECT_EQ(result.mate_in, GetParam().mate_in);
  switch (GetParam().expected) {
    case Expected::kDraw:
    case Expected::kWhiteMates:
      EXPECT_EQ(result.score_cp, 0);
      break;
    case Expected::kWhiteIsWinning:
      EXPECT_GT(result.score_cp, 300);
      break;
    case Expected::kBlackIsWinning:
      EXPECT_LT(result.score_cp, -300);
      break;
  }
  EXPECT_FALSE(result.line.empty());
}

INSTANTIATE_TEST_SUITE_P(Table, Clocks, ::testing::ValuesIn(kClocks),
                         testing_support::NameOfRow());

TEST(SeventyFiveMoves, EndTheGameUnlessMated) {
  const SearchResult drawn =
      Searched(FromFen("7k/8/6K1/8/8/8/8/R7 w - - 150 120"));
  EXPECT_TRUE(drawn.complete);
  EXPECT_TRUE(drawn.line.empty());
  EXPECT_EQ(drawn.score_cp, 0);
  EXPECT_EQ(drawn.mate_in, 0);
  const SearchResult mated =
      Searched(FromFen("R6k/8/6K1/8/8/8/8/8 b - - 150 120"));
  EXPECT_TRUE(mated.complete);
  EXPECT_TRUE(mated.line.empty());
  EXPECT_GT(mated.score_cp, 0);
}

struct Escape : testing_support::Row {
  const char* fen;
  Side loser;  // but for the escape
};

// Queen checks on e8 and h5 without end, a rook down and about to be mated.
constexpr Escape kPerpetuals[] = {
    {{"QueenChecksOnE8AndH5"},
     "6k1/6p1/8/8/4Q3/8/1qr3PP/6K1 w - - 0 1",
     Side::kWhite},
    {{"TheSameForBlack"},
     "6k1/1QR3pp/8/4q3/8/8/6P1/6K1 b - - 0 1",
     Side::kBlack},
};

class Perpetuals : public ::testing::TestWithParam<Escape> {};

TEST_P(Perpetuals, AreFoundByTheSideThatIsLost) {
  const Position position = FromFen(GetParam().fen);
  EXPECT_LT(Sign(GetParam().loser) * ScoreOf(position, Weights()), -300);
  const SearchResult result = Searched(position);
  EXPECT_EQ(result.score_cp, 0);
  EXPECT_EQ(result.mate_in, 0);
  // Every move of the loser gives check, and the line ends where it was before.
  std::multiset<std::uint64_t> seen = {position.hash()};
  Position at = position;
  for (const Move move : result.line) {
    ASSERT_TRUE(IsLegal(at, move)) << ToFen(at);
    const Side mover = at.side_to_move();
    at = at.After(move);
    seen.insert(at.hash());
    EXPECT_TRUE(mover != GetParam().loser || at.InCheck()) << ToFen(at);
  }
  EXPECT_EQ(seen.count(at.hash()), 2U);
}

INSTANTIATE_TEST_SUITE_P(Table, Perpetuals, ::testing::ValuesIn(kPerpetuals),
                         testing_support::NameOfRow());

// The rook gives itself up with check: taken by either piece it leaves a
// stalemate, and a king that steps aside loses the queen.
TEST(Stalemate, SavesTheSideThatIsLost) {
  const Position position = FromFen("6R1/8/8/8/8/4q2k/7p/7K w - - 0 1");
  EXPECT_LT(ScoreOf(position, Weights()), -300);
  const SearchResult result = Searched(position);
  EXPECT_EQ(result.score_cp, 0);
  EXPECT_EQ(result.mate_in, 0);
  ASSERT_FALSE(result.line.empty());
  EXPECT_EQ(ToSan(position, result.line.front()), "Rg3+");
}

}  // namespace
}  // namespace assay
