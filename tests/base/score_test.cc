// Rounding half away from zero, which makes colour swap negate exactly.
#include "assay/base/score.h"

#include <cmath>

#include "gtest/gtest.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct Rounding : testing_support::Row {
  int value;
  int numerator;
  int denominator;
  int rounded;
};

constexpr Rounding kRoundings[] = {
    {{"Exact"}, 12, 1, 4, 3},
    {{"BelowHalfDown"}, 10, 1, 3, 3},
    {{"AboveHalfUp"}, 11, 1, 3, 4},
    {{"HalfUp"}, 5, 1, 2, 3},
    {{"HalfOfOne"}, 1, 1, 2, 1},
    {{"MinusHalfDown"}, -1, 1, 2, -1},
    {{"NegativeHalf"}, -5, 1, 2, -3},
    {{"NegativeBelowHalf"}, -10, 1, 3, -3},
    {{"JustBelowHalf"}, 127, 1, 256, 0},
    {{"JustHalf"}, 128, 1, 256, 1},
    {{"Zero"}, 0, 7, 9, 0},
    {{"NegativeNumerator"}, 5, -1, 2, -3},
};

class Roundings : public ::testing::TestWithParam<Rounding> {};

TEST_P(Roundings, GoHalfAwayFromZero) {
  const Rounding& row = GetParam();
  EXPECT_EQ(ScaleRounded(row.value, row.numerator, row.denominator),
            row.rounded);
}

INSTANTIATE_TEST_SUITE_P(Values, Roundings, ::testing::ValuesIn(kRoundings),
                         testing_support::NameOfRow());

// std::lround() rounds half away from zero by the C standard.
TEST(AtPhase, IsTheRoundedMeanAndNegatesExactly) {
  for (int midgame = -40; midgame <= 40; midgame += 3) {
    for (int endgame = -1000; endgame <= 1000; endgame += 77) {
      for (int phase = 0; phase <= kFullPhase; ++phase) {
        const Tapered value{midgame, endgame};
        const double mean = (midgame * phase + endgame * (256 - phase)) / 256.0;
        ASSERT_EQ(AtPhase(value, phase), std::lround(mean));
        ASSERT_EQ(AtPhase(-value, phase), -AtPhase(value, phase));
      }
    }
  }
}

TEST(Tapered, AddsInBothPhases) {
  const Tapered a{3, 5};
  const Tapered b{10, -20};
  EXPECT_EQ(a + b, (Tapered{13, -15}));
  EXPECT_EQ(a - b, (Tapered{-7, 25}));
  EXPECT_EQ(a * -2, (Tapered{-6, -10}));
  EXPECT_EQ(Scale(a, 1, 2), (Tapered{2, 3}));
}

}  // namespace
}  // namespace assay
