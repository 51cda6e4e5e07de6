// Plans held against the opponent's answers, on positions of our own.
#include "assay/plans/appraise.h"

#include "tests/plans/pawn_plans.h"

namespace assay {
namespace {

using testing_support::Flipped;
using testing_support::FromPieces;
using testing_support::Row;
using testing_support::Text;

struct StandingRow : Row {
  const char* pieces;
  std::vector<const char*> moves;  // White's: from and to
  Standing standing;
  const char* counter;  // "" for none, "*" for any
};

const StandingRow kRows[] = {
    {{"NothingStopsIt"},
     "Kg1 Nf3 a2 v Kg8 h7",
     {"f3d2", "d2c4"},
     Standing::kInTime,
     ""},
    {{"PawnGuardsTheGoal"},
     "Kg1 Nf3 a2 v Kg8 b7 h7",
     {"f3d2", "d2c4"},
     Standing::kStopped,
     "b7b5"},
    {{"PawnGuardsTheGoalAtOnce"},
     "Kg1 Nf3 a2 v Kg8 b7 h7, Black to move",
     {"f3d2", "d2c4"},
     Standing::kStopped,
     "b7b5"},
    {{"FirstStepLosesAPawn"},
     "Kg1 e4 v Kg8 d6 f6",
     {"e4e5"},
     Standing::kStopped,
     "*"},
    {{"OneGuardMakesItSafe"},
     "Kg1 Ra1 e4 v Kg8 f6",
     {"e4e5"},
     Standing::kNeeds,
     "f6e5"},
    {{"GuardedLeverIsMeantToBeTaken"},
     "Kg1 Rb1 a4 b3 v Kg8 Rb8 c6",
     {"b3b4", "b4b5"},
     Standing::kInTime,
     "*"},
};

Plan PlanOf(const Position& position, Side side, const StandingRow& row) {
  static const auto& weights = *new Weights();
  const Facts facts(position);
  Draft draft;
  draft.promise = 60;
  Position at = position;
  for (std::string text : row.moves) {
    if (side == Side::kBlack) text = Flipped(text);
    const Move move = FindMove(at, side, ParseSquare(text.substr(0, 2)),
                               ParseSquare(text.substr(2)));
    draft.moves.push_back(move);
    at = *PlayAlone(at, side, {move});
  }
  draft.targets.Add(draft.moves.back().to());
  return Appraise({position, facts, weights, side}, draft);
}

void ExpectStanding(const Position& position, Side side,
                    const StandingRow& row) {
  const Plan plan = PlanOf(position, side, row);
  EXPECT_EQ(plan.standing, row.standing);
  EXPECT_EQ(plan.needed.is_null(), row.standing != Standing::kNeeds);
  std::string counter = row.counter;
  if (counter == "*") return;
  if (side == Side::kBlack) counter = Flipped(counter);
  EXPECT_EQ(Text(plan.counter), counter);
}

class Appraisals : public ::testing::TestWithParam<StandingRow> {};

TEST_P(Appraisals, Stand) {
  const Position position = FromPieces(GetParam().pieces);
  ExpectStanding(position, Side::kWhite, GetParam());
  SCOPED_TRACE("with the colours swapped");
  ExpectStanding(SwapColours(position), Side::kBlack, GetParam());
}

INSTANTIATE_TEST_SUITE_P(Rows, Appraisals, ::testing::ValuesIn(kRows),
                         testing_support::NameOfRow());

TEST(Discounted, TakesATenthATempo) {
  EXPECT_EQ(Discounted(100, 0), 100);
  EXPECT_EQ(Discounted(100, 1), 90);
  EXPECT_EQ(Discounted(100, 2), 81);
}

}  // namespace
}  // namespace assay
