// What holds of every plan, whatever its kind: on positions of plausible play.
#include "assay/plans/planner.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "assay/notation/fen.h"
#include "assay/plans/draft.h"
#include "assay/rules/movegen.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

using testing_support::FromFen;

const Weights& DefaultWeights() {
  static const auto& weights = *new Weights();
  return weights;
}

Plans PlansOf(const Position& position, std::size_t most = 3) {
  return FindPlans(Facts(position), DefaultWeights(), most);
}

Move Swapped(Move move) {
  const Square from = Relative(Side::kBlack, move.from());
  const Square to = Relative(Side::kBlack, move.to());
  return move.is_promotion() ? Move::Promotion(from, to, move.promotion())
                             : Move(from, to, move.type());
}

TEST(Planner, GivesMovesThatCanBePlayedAlone) {
  int found = 0;
  testing_support::PlayPlausibly(71, 1500, [&](const Position& position) {
    const Plans plans = PlansOf(position);
    for (const Side side : kSides) {
      // A second of a kind is told only where the first does not work.
      std::set<std::pair<PlanKind, bool>> kinds;
      EXPECT_LE(plans.Of(side).size(), 3U);
      for (const Plan& plan : plans.Of(side)) {
        ++found;
        EXPECT_EQ(plan.side, side);
        const bool stopped = plan.standing == Standing::kStopped;
        EXPECT_TRUE(kinds.emplace(plan.kind, stopped).second)
            << Name(plan.kind);
        ASSERT_GE(plan.tempi(), 1);
        EXPECT_LE(plan.tempi(), 5);
        EXPECT_TRUE(PlayAlone(position, side, plan.moves).has_value())
            << Name(plan.kind) << " " << ToFen(position);
        EXPECT_GE(plan.worth, kLeastWorth);
        EXPECT_FALSE(plan.claims.empty() && plan.targets.empty());
      }
    }
  });
  EXPECT_GE(found, 1000);
}

TEST(Planner, SeesTheSameFromTheOtherSide) {
  int compared = 0;
  int same = 0;
  testing_support::PlayPlausibly(72, 600, [&](const Position& position) {
    const Plans plans = PlansOf(position);
    const Plans swapped = PlansOf(SwapColours(position));
    for (const Side side : kSides) {
      const std::vector<Plan>& own = plans.Of(side);
      const std::vector<Plan>& other = swapped.Of(Other(side));
      ++compared;
      bool equal = own.size() == other.size();
      for (std::size_t i = 0; equal && i < own.size(); ++i) {
        std::vector<Move> moves;
        for (const Move move : other[i].moves) moves.push_back(Swapped(move));
        equal = own[i].kind == other[i].kind && own[i].moves == moves &&
                own[i].worth == other[i].worth;
      }
      if (equal) ++same;
    }
  });
  // Where two plans are worth the same, the order of squares may decide.
  EXPECT_GE(100 * same, 95 * compared) << same << " of " << compared;
}

TEST(Planner, HasNothingToSayOfFinishedGames) {
  for (const char* fen :
       {"7k/6Q1/6K1/8/8/8/8/8 b - - 0 1", "7k/5Q2/6K1/8/8/8/8/8 b - - 0 1"}) {
    const Plans plans = PlansOf(FromFen(fen));
    EXPECT_TRUE(plans.of[0].empty() && plans.of[1].empty()) << fen;
  }
}

TEST(Planner, KeepsToTheNumberAskedFor) {
  const Position position = FromFen(
      "r1bq1rk1/pp2bppp/2n1pn2/2pp4/2PP4/2N1PN2/PP2BPPP/R1BQ1RK1 w - - 0 9");
  for (std::size_t most = 0; most <= 4; ++most) {
    const Plans plans = PlansOf(position, most);
    EXPECT_LE(plans.of[0].size(), most);
    EXPECT_LE(plans.of[1].size(), most);
  }
}

// What is granted for all plans is not overspent by more than a third, whatever
// is looked into.
TEST(ProvePlans, VisitsNoMorePositionsThanGranted) {
  constexpr std::uint64_t kGranted = 3000;
  std::uint64_t most_used = 0;
  testing_support::PlayPlausibly(53, 60, [&](const Position& position) {
    Plans plans = PlansOf(position, 4);
    const Proof best = Prove(position, {DefaultWeights(), 500});
    std::uint64_t left = 1000000;
    Inquiry inquiry{DefaultWeights(), kGranted};
    inquiry.left = &left;
    ProvePlans(position, best, inquiry, 3, plans);
    most_used = std::max(most_used, 1000000 - left);
  });
  EXPECT_LE(most_used, kGranted + kGranted / 3);
  EXPECT_GT(most_used, kGranted / 2);
}

TEST(ProvePlans, StopsWhatLosesToTheBestReply) {
  int stopped = 0;
  testing_support::PlayPlausibly(73, 150, [&](const Position& position) {
    if (!HasLegalMove(position) || position.InCheck()) return;
    Plans plans = PlansOf(position);
    const Inquiry inquiry{DefaultWeights(), 4000, nullptr};
    const Proof best = Prove(position, inquiry);
    ProvePlans(position, best, inquiry, 3, plans);
    for (const Side side : kSides) {
      for (const Plan& plan : plans.Of(side)) {
        EXPECT_FALSE(plan.proof.line.empty());
        if (plan.standing != Standing::kStopped) continue;
        ++stopped;
      }
    }
  });
  EXPECT_GE(stopped, 1);
}

}  // namespace
}  // namespace assay
