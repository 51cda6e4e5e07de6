// Moves that take the opponent's plan away, on positions of our own: Black
// means to bring the knight to c5.
#include "tests/plans/pawn_plans.h"

namespace assay {
namespace {

using testing_support::Flipped;
using testing_support::FromPieces;
using testing_support::Text;

std::vector<Draft> Restraints(const Position& position, Side side,
                              Centipawns worth, Standing standing) {
  static const auto& weights = *new Weights();
  const auto at = [side](const char* text) {
    return ParseSquare(side == Side::kWhite ? text : Flipped(text));
  };
  Plan plan;
  plan.side = Other(side);
  plan.worth = plan.gain = worth;
  plan.standing = standing;
  plan.moves = {FindMove(position, plan.side, at("f6"), at("d7"))};
  const Position next = *PlayAlone(position, plan.side, plan.moves);
  plan.moves.push_back(FindMove(next, plan.side, at("d7"), at("c5")));
  plan.targets = {at("c5")};
  const Facts facts(position);
  std::vector<Draft> drafts;
  DraftRestraints({position, facts, weights, side}, {plan}, drafts);
  return drafts;
}

void Expect(const char* pieces, const std::string& moves, Centipawns worth = 60,
            Standing standing = Standing::kInTime) {
  SCOPED_TRACE(pieces);
  for (const Side side : kSides) {
    const bool white = side == Side::kWhite;
    const Position position =
        white ? FromPieces(pieces) : SwapColours(FromPieces(pieces));
    const auto drafts = Restraints(position, side, worth, standing);
    if (moves.empty()) {
      EXPECT_TRUE(drafts.empty());
      continue;
    }
    ASSERT_EQ(drafts.size(), 1u);
    EXPECT_EQ(drafts[0].kind, PlanKind::kRestrain);
    EXPECT_EQ(Text(drafts[0].moves), white ? moves : Flipped(moves));
    EXPECT_EQ(Text(drafts[0].targets), white ? "c5" : "c4");
    EXPECT_EQ(drafts[0].promise, 20);
    EXPECT_FALSE(drafts[0].claims.empty());
  }
}

TEST(Restraints, APawnGuardsTheGoal) {
  Expect("Kg1 b2 h2 v Kg8 Nf6 a7", "b2b4");
}
TEST(Restraints, SideNotToMove) {
  Expect("Kg1 b2 h2 v Kg8 Nf6 a7, Black to move", "b2b4");
}
TEST(Restraints, SilentWhereNothingStopsIt) {
  Expect("Kg1 h2 v Kg8 Nf6 a7", "");
}
TEST(Restraints, SilentWhereTheStopLosesThePawn) {
  Expect("Kg1 b2 h2 v Kg8 Nf6 a5 c7", "");
}
TEST(Restraints, SilentWhereTheStopLosesThePawnBesideMore) {
  // The knight on h3 hangs as it is, which makes b4 no safer.
  Expect("Kg1 Nh3 b2 h2 v Kg8 Nf6 Bc8 a5 c7", "");
}
TEST(Restraints, SilentAgainstASmallPlan) {
  Expect("Kg1 b2 h2 v Kg8 Nf6 a7", "", 20);
}
TEST(Restraints, SilentAgainstAStoppedPlan) {
  Expect("Kg1 b2 h2 v Kg8 Nf6 a7", "", 60, Standing::kStopped);
}

// Black means to play b7-b5 and c5-c4; what the side on move has against it.
void ExpectAgainstPawns(const char* pieces, PlanKind kind,
                        const std::string& moves) {
  SCOPED_TRACE(pieces);
  static const auto& weights = *new Weights();
  for (const Side side : kSides) {
    const bool white = side == Side::kWhite;
    const Position position =
        white ? FromPieces(pieces) : SwapColours(FromPieces(pieces));
    const auto at = [white](const char* text) {
      return ParseSquare(white ? text : Flipped(text));
    };
    Plan plan;
    plan.side = Other(side);
    plan.kind = kind;
    plan.worth = plan.gain = 60;
    plan.standing = Standing::kStopped;
    plan.moves = {FindMove(position, plan.side, at("b7"), at("b5")),
                  FindMove(position, plan.side, at("c5"), at("c4"))};
    plan.targets = {at("c4")};
    const Facts facts(position);
    std::vector<Draft> drafts;
    DraftRestraints({position, facts, weights, side}, {plan}, drafts);
    if (moves.empty()) {
      EXPECT_TRUE(drafts.empty());
      continue;
    }
    ASSERT_EQ(drafts.size(), 1u);
    EXPECT_EQ(Text(drafts[0].moves), white ? moves : Flipped(moves));
  }
}

TEST(Restraints, PawnsAreStoppedBeforeTheyGo) {
  ExpectAgainstPawns("Kg1 Nc3 Rb1 a2 d5 h2 v Kg8 Bf8 a6 b7 c5 d6 h7",
                     PlanKind::kExpansion, "a2a4");
}
TEST(Restraints, PiecesCanBeAnsweredLater) {
  ExpectAgainstPawns("Kg1 Nc3 Rb1 a2 d5 h2 v Kg8 Bf8 a6 b7 c5 d6 h7",
                     PlanKind::kRegroup, "");
}
TEST(Restraints, PawnsThatAreLostAnywayNeedNoStop) {
  ExpectAgainstPawns("Kg1 Nc3 Be2 Rb1 a2 d5 h2 v Kg8 Bf8 b7 c5 d6 h7",
                     PlanKind::kExpansion, "");
}

// Black's a6 is carried out before White's a6 could stop it.
TEST(Restraints, SilentWhereTheOpponentCarriesThePlanOutAtOnce) {
  static const auto& weights = *new Weights();
  for (const bool black_to_move : {false, true}) {
    const Position position =
        FromPieces(black_to_move ? "Kg1 a5 h2 v Kg8 a7 h7, Black to move"
                                 : "Kg1 a5 h2 v Kg8 a7 h7");
    Plan plan;
    plan.side = Side::kBlack;
    plan.worth = plan.gain = 60;
    plan.moves = {FindMove(position, plan.side, kA7, kA6)};
    plan.targets = {kA6};
    const Facts facts(position);
    std::vector<Draft> drafts;
    DraftRestraints({position, facts, weights, Side::kWhite}, {plan}, drafts);
    EXPECT_EQ(drafts.empty(), black_to_move);
  }
}

}  // namespace
}  // namespace assay
