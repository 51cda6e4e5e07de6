// Both sides' plans as a race: White's king walk against a queening pawn or a
// knight's move, on positions of our own.
#include "assay/plans/race.h"

#include "tests/plans/pawn_plans.h"

namespace assay {
namespace {

using testing_support::FromPieces;

Move M(const Position& position, Side side, Square from, Square to) {
  return FindMove(position, side, from, to);
}

class Races : public ::testing::Test {
 protected:
  void Run(Side side, Centipawns own_gain, Centipawns rival_gain,
           Standing rival_standing = Standing::kInTime) {
    Position position = FromPieces("Kb1 a2 v Kg8 h5");
    if (side == Side::kBlack) position = SwapColours(position);
    const auto at = [side](const char* text) {
      return ParseSquare(side == Side::kWhite ? text
                                              : testing_support::Flipped(text));
    };
    Plan slow;
    slow.side = side;
    slow.gain = slow.worth = own_gain;
    Position here = position;
    for (const auto& [from, to] :
         {std::pair{"b1", "b2"}, {"b2", "b3"}, {"b3", "b4"}}) {
      slow.moves.push_back(M(here, side, at(from), at(to)));
      here = *PlayAlone(here, side, {slow.moves.back()});
    }
    Plan rival;
    rival.side = Other(side);
    rival.gain = rival.worth = rival_gain;
    rival.standing = rival_standing;
    rival.moves = {M(position, Other(side), at("h5"), at("h4"))};
    const Facts facts(position);
    const Weights weights;
    const bool swapped = side == Side::kBlack;
    own_ = {slow};
    rivals_ = {rival};
    Compare({position, facts, weights, Side::kWhite},
            {position, facts, weights, Side::kBlack}, swapped ? rivals_ : own_,
            swapped ? own_ : rivals_);
    race_ = FindRace({position, facts, weights, Side::kWhite},
                     {position, facts, weights, Side::kBlack},
                     swapped ? rivals_ : own_, swapped ? own_ : rivals_);
  }

  Race race_;
  std::vector<Plan> own_;
  std::vector<Plan> rivals_;
};

TEST_F(Races, SlowAgainstAFasterBiggerPlan) {
  for (const Side side : kSides) {
    Run(side, 40, 100);
    EXPECT_EQ(own_[0].standing, Standing::kSlow);
    EXPECT_EQ(rivals_[0].standing, Standing::kInTime);
  }
}

TEST_F(Races, InTimeAgainstAFasterPlanNoBigger) {
  for (const Side side : kSides) {
    Run(side, 100, 100);
    EXPECT_EQ(own_[0].standing, Standing::kInTime);
  }
}

TEST_F(Races, AStoppedPlanIsNoRival) {
  for (const Side side : kSides) {
    Run(side, 40, 100, Standing::kStopped);
    EXPECT_EQ(own_[0].standing, Standing::kInTime);
  }
}

TEST_F(Races, SaysWhoIsFasterAndWhatToStartWith) {
  for (const Side side : kSides) {
    Run(side, 100, 100);
    EXPECT_EQ(race_.faster, Other(side));
    EXPECT_EQ(race_.start, Start::kOwnPlan);
    EXPECT_EQ(race_.first, own_[0].moves.front());
    EXPECT_FALSE(race_.compensated.has_value());  // a pawn each
  }
}

TEST_F(Races, HasNobodyFasterWithoutAPlan) {
  for (const Side side : kSides) {
    Run(side, 10, 10);
    EXPECT_FALSE(race_.faster.has_value());
    EXPECT_EQ(race_.start, Start::kNothing);
    EXPECT_TRUE(race_.first.is_null());
  }
}

}  // namespace
}  // namespace assay
