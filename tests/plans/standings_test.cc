// Plans that fail, on positions of our own in structures that handbooks treat
// (tests/plans/handbook_fails.tsv names the sources): asked about exactly these
// moves, the planner has to say that they fail, and how.
#include <gtest/gtest.h>

#include <string>

#include "assay/facts/claim_makers.h"
#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "assay/plans/judge.h"
#include "assay/plans/planner.h"
#include "assay/rules/movegen.h"
#include "tests/plans/handbook_rows.h"
#include "tests/support/from_pieces.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

using testing_support::HandbookRow;

constexpr std::size_t kStanding = 6;
constexpr std::size_t kLine = 7;

const Weights& DefaultWeights() {
  static const auto& weights = *new Weights();
  return weights;
}

// The first move of the row's line; null where it gives none.
Move FirstOfLine(const HandbookRow& row, const Position& position) {
  if (row.cells[kLine] == "-") return Move();
  const Position own = *WithTurn(position, row.side());
  const std::string san = testing_support::Split(row.cells[kLine], ' ')[0];
  return *ParseSan(own, san);
}

// Adds so many moves, by way of safe squares, of the piece on the square that
// bring it to the goal, with `first`, if any, the first.
bool Walk(const Position& position, Side side, Move first, Square goal,
          std::size_t most, std::vector<Move>& moves, Square from) {
  if (most == 0) return from == goal;
  MoveList legal;
  LegalMoves(*WithTurn(position, side), legal);
  for (const Move move : legal) {
    if (move.from() != from || !position.At(move.to()).empty()) continue;
    if (!first.is_null() && move != first) continue;
    const auto after = PlayAlone(position, side, {move});
    if (most > 1 && !StandsSafely(*after, move.to())) continue;
    moves.push_back(move);
    if (Walk(*after, side, Move(), goal, most - 1, moves, move.to())) {
      return true;
    }
    moves.pop_back();
  }
  return false;
}

// The moves that the row's key names: pawns "b2-b4", routes "Nd2>f5" (by way of
// the line's first move, where there is one), trades and rooks by that move.
std::vector<Move> MovesOf(const HandbookRow& row, const Position& position) {
  const std::string& key = row.cells[5];
  const Move first = FirstOfLine(row, position);
  const std::vector<Square> squares = testing_support::SquaresOf(key);
  std::vector<Move> moves;
  if (key.find('-') != std::string::npos) {
    Position at = position;
    for (std::size_t i = 0; i + 1 < squares.size(); i += 2) {
      moves.push_back(FindMove(at, row.side(), squares[i], squares[i + 1]));
      at = *PlayAlone(at, row.side(), {moves.back()});
    }
    return moves;
  }
  if (key.find('*') != std::string::npos) return {first};
  for (std::size_t most = 1; most <= 3; ++most) {
    if (Walk(position, row.side(), first, squares[1], most, moves,
             squares[0])) {
      return moves;
    }
  }
  return {};
}

struct Count {
  int right = 0;
  int in_time = 0;
};

Count CountAll(std::uint64_t nodes) {
  Count count;
  for (const HandbookRow& row : testing_support::ReadRows(
           std::string(ASSAY_PLANS_DIR) + "/handbook_fails.tsv")) {
    const Position position = *PositionFromFen(row.fen());
    const Facts facts(position);
    const Outlook outlook{position, facts, DefaultWeights(), row.side()};
    Draft draft;
    for (int kind = 0; kind < kPlanKinds; ++kind) {
      if (row.cells[4] == Name(static_cast<PlanKind>(kind))) {
        draft.kind = static_cast<PlanKind>(kind);
      }
    }
    draft.moves = MovesOf(row, position);
    if (draft.moves.empty()) {
      ADD_FAILURE() << row.name() << ": no moves";
      continue;
    }
    draft.targets = {draft.moves.back().to()};
    // What the trade makes of it: the rows say that it is taught.
    draft.promise = 50;
    const Plan plan =
        JudgePlan(outlook, draft, {DefaultWeights(), nodes, nullptr});
    if (plan.standing == Standing::kInTime) ++count.in_time;
    if (Name(plan.standing) == row.cells[kStanding]) {
      ++count.right;
    } else {
      std::printf(
          "%s: %s, not %s; gain %d, counter %s\n", row.name().c_str(),
          Name(plan.standing), row.cells[kStanding].c_str(), plan.gain,
          plan.counter.empty() ? "-" : ToString(plan.counter[0].to()).c_str());
    }
  }
  return count;
}

TEST(Standings, AreThoseOfTheRowsByCounting) {
  const Count count = CountAll(0);
  std::printf("%d right, %d in time\n", count.right, count.in_time);
  EXPECT_GE(count.right, 20);
}

TEST(Standings, AreThoseOfTheRowsWhenProved) {
  const Count count = CountAll(kDefaultProofNodes);
  std::printf("%d right, %d in time\n", count.right, count.in_time);
  EXPECT_GE(count.right, 20);
  // BishopLeavesPawn: the g-file is play enough for the pawn by search.
  EXPECT_LE(count.in_time, 1);
}

// What is offered by itself is told as it stands, too: with the nodes that an
// explanation spends on plans.
TEST(Standings, OfPlansOfferedAreNeverInTime) {
  const Inquiry inquiry{DefaultWeights(), kDefaultProofNodes / 2, nullptr};
  for (const HandbookRow& row : testing_support::ReadRows(
           std::string(ASSAY_PLANS_DIR) + "/handbook_fails.tsv")) {
    const Position position = *PositionFromFen(row.fen());
    Plans plans = FindPlans(Facts(position), DefaultWeights(), 3);
    const Proof best = Prove(position, {DefaultWeights(), 12000, nullptr});
    ProvePlans(position, best, inquiry, 3, plans);
    const std::vector<Move> moves = MovesOf(row, position);
    for (const Plan& plan : plans.Of(row.side())) {
      if (plan.moves != moves) continue;
      EXPECT_NE(plan.standing, Standing::kInTime) << row.name();
      // Search holds that ...Bb4 would prepare the break.
      if (row.name() == "SlavFreeingTooSoon") continue;
      EXPECT_EQ(Name(plan.standing), row.cells[kStanding]) << row.name();
    }
  }
}

// Common practice, no source: a piece that is kept from one square develops to
// another, so that only what takes or checks can stand in the way.
TEST(Development, IsStoppedByNoQuietMove) {
  const auto counter = [](const char* fen, Side side) {
    const Position position = *PositionFromFen(fen);
    const Facts facts(position);
    const Plans plans = FindPlans(facts, DefaultWeights(), 3);
    for (const Plan& plan : plans.Of(side)) {
      if (plan.kind == PlanKind::kDevelop) return plan.counter;
    }
    ADD_FAILURE() << "no plan to develop";
    return std::vector<Move>();
  };
  // Not by g4 and g5, nor by a3.
  EXPECT_TRUE(
      counter("rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
              Side::kBlack)
          .empty());
  EXPECT_TRUE(
      counter("rnbqkbnr/pppp1ppp/8/4p3/8/5P2/PPPPP1PP/RNBQKBNR w KQkq - 0 2",
              Side::kBlack)
          .empty());
  // By ...Nxe5: White has a knight to save.
  const std::vector<Move> takes =
      counter("r1bqkb1r/pppp1ppp/2n5/4N3/4n3/8/PPPP1PPP/RNBQKB1R b KQkq - 0 4",
              Side::kWhite);
  ASSERT_EQ(takes.size(), 1U);
  EXPECT_EQ(takes.front().to(), kE5);
}

// The king walks to b4 in three; a knight on g8 guards b4 in two moves and in
// no fewer.
TEST(LongStops, AKnightComesRoundInTime) {
  Position position = testing_support::FromPieces("Kb1 h2 v Kh6 Ng8 h7");
  for (const Side side : kSides) {
    const auto at = [side](const char* square) {
      return Relative(side, ParseSquare(square));
    };
    const Facts facts(position);
    const Outlook outlook{position, facts, DefaultWeights(), side};
    Draft draft;
    draft.kind = PlanKind::kKingWalk;
    draft.moves = {Move(at("b1"), at("b2")), Move(at("b2"), at("b3")),
                   Move(at("b3"), at("b4"))};
    draft.targets = {at("b4")};
    draft.promise = 200;
    const Plan plan = JudgePlan(outlook, draft, {DefaultWeights(), 0, nullptr});
    EXPECT_EQ(plan.standing, Standing::kStopped);
    ASSERT_EQ(plan.counter.size(), 2U);
    EXPECT_EQ(plan.counter[0], Move(at("g8"), at("e7")));
    EXPECT_EQ(plan.counter_from, 1U);
    position = SwapColours(position);
  }
}

TEST(IfIgnored, IsALegalLineThatWinsWhatItSays) {
  int claimed = 0;
  int overstated = 0;
  testing_support::PlayPlausibly(91, 200, [&](const Position& position) {
    if (!HasLegalMove(position)) return;
    Plans plans = FindPlans(Facts(position), DefaultWeights(), 3);
    const Inquiry inquiry{DefaultWeights(), 3000, nullptr};
    const Proof best = Prove(position, inquiry);
    ProvePlans(position, best, inquiry, 3, plans);
    for (const Side side : kSides) {
      int needing = 0;
      for (const Plan& plan : plans.Of(side)) {
        if (plan.standing == Standing::kNeeds) ++needing;
        const IfIgnored& ignored = plan.if_ignored;
        if (ignored.line.empty()) continue;
        ++claimed;
        EXPECT_EQ(plan.standing, Standing::kInTime);
        Position at = position;
        int ignoring = 0;
        for (const Move move : ignored.line) {
          if (at.side_to_move() != side) ++ignoring;
          if (move.is_null()) {
            ASSERT_FALSE(at.InCheck());
          } else {
            ASSERT_TRUE(IsLegal(at, move));
          }
          at = at.AfterStep(move);
        }
        EXPECT_GT(ignoring, 0);
        // With all the nodes, and with a third of a pawn to spare.
        const Centipawns then = ScoreFor(Prove(at, inquiry), side);
        if (then + 33 < ScoreFor(best, side)) ++overstated;
        if (ignored.material == 0) continue;
        EXPECT_GE(ignored.material, 100);
        EXPECT_EQ(MaterialBalance(at, side) - MaterialBalance(position, side),
                  ignored.material);
      }
      EXPECT_LE(needing, 1);
    }
  });
  EXPECT_GE(claimed, 10);
  EXPECT_LE(20 * overstated, claimed) << overstated << " of " << claimed;
}

}  // namespace
}  // namespace assay
