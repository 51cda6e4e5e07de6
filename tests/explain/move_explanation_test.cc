// What a move gains and what it gives up: facts of common practice (no source),
// and what must hold of every move.
#include "assay/explain/move_explanation.h"

#include <algorithm>
#include <random>
#include <string>
#include <vector>

#include "assay/notation/san.h"
#include "assay/rules/movegen.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/explain/sentence_checker.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"
#include "tests/support/static_only.h"

namespace assay {
namespace {

using ::testing::HasSubstr;
using testing_support::Checker;
using testing_support::FromFen;
using testing_support::StaticOnly;

MoveExplanation Told(const char* fen, const char* san,
                     const ExplainOptions& options = StaticOnly()) {
  const Position position = FromFen(fen);
  const absl::StatusOr<Move> move = ParseMove(position, san);
  EXPECT_TRUE(move.ok()) << san << " in " << fen;
  return ExplainMove(Assayer(), position, *move, options);
}

// All of a list's sentences.
std::string Texts(const std::vector<LedgerChange>& changes) {
  std::string text;
  for (const LedgerChange& change : changes) text += change.text + "\n";
  return text;
}

const LedgerChange* Find(const std::vector<LedgerChange>& changes,
                         TermId term) {
  for (const LedgerChange& change : changes) {
    if (change.term == term) return &change;
  }
  return nullptr;
}

struct Fact : testing_support::Row {
  const char* fen;
  const char* move;
  // Each is part of a sentence of what is given up (or gained).
  std::vector<std::string> given;
  std::vector<std::string> gained;
};

constexpr char kItalian[] =
    "r1bq1rk1/ppp2ppp/2np1n2/2b1p3/2B1P3/2PP1N2/PP3PPP/RNBQ1RK1 w - - 0 7";
const Fact kFacts[] = {
    // The g-pawn leaves the squares beside it behind for good.
    {{"G4BesideTheCastledKing"},
     kItalian,
     "g4",
     {"never again guard", "f4", "h3", "gone from g2"},
     {}},
    {{"G5BesideTheCastledKing"},
     "r1bq1rk1/ppp2ppp/2np1n2/2b1p3/2B1P3/2PP1N2/PP3PPP/RNBQ1RK1 b - - 0 7",
     "g5",
     {"never again guard", "f5", "h6"},
     {}},
    // The knight is the guard of the centre and of h2.
    {{"KnightLeavesF3"}, kItalian, "Nh4", {"no longer guards", "d4"}, {}},
    {{"F3TakesTheKnightsSquare"},
     "rnbqkbnr/pp2pppp/2p5/3p4/3PP3/8/PPP2PPP/RNBQKBNR w KQkq - 0 3",
     "f3",
     {"f3", "best square", "g1"},
     {}},
    {{"E3ShutsInTheBishop"},
     "rnbqkb1r/ppp1pppp/5n2/3p4/3P4/5N2/PPP1PPPP/RNBQKB1R w KQkq - 2 3",
     "e3",
     {"bishop on c1"},
     {}},
    {{"KnightBeforeTheCPawn"},
     "rnbqkbnr/ppp1pppp/8/3p4/3P4/8/PPP1PPPP/RNBQKBNR w KQkq - 0 2",
     "Nc3",
     {"in the way of the break c4"},
     {"develops the knight"}},
    // The guard of the dark squares by the king goes for a knight.
    {{"FianchettoBishopExchanged"},
     "r2q1rk1/pp1bppbp/2np2p1/8/3NP3/2N1B3/PPP1BPPP/R2Q1RK1 b - - 0 9",
     "Bxd4",
     {"dark squares", "f6", "h6"},
     {}},
    {{"CastlingGetsTheKingAway"},
     "r1bqkb1r/pppp1ppp/2n2n2/4p3/2B1P3/5N2/PPPP1PPP/RNBQK2R w KQkq - 4 4",
     "O-O",
     {},
     {"castles"}},
    // Towards the centre, but it doubles them.
    {{"TakingWithTheAPawn"},
     "r2q1rk1/1pp2ppp/p1np1n2/4p3/4P3/1bPP1N2/PP1N1PPP/R1BQ1RK1 w - - 0 11",
     "axb3",
     {"doubled pawns on b2 and b3"},
     {"a rook on the half-open a-file"}},
    {{"PawnLeftWithoutItsGuard"},
     "4k3/8/8/8/3p4/8/3P1N2/4K3 w - - 0 1",
     "Kf1",
     {"pawn on d2 is left without a guard"},
     {}},
};

class Practice : public ::testing::TestWithParam<Fact> {};

TEST_P(Practice, IsSaid) {
  const Fact& row = GetParam();
  const MoveExplanation told = Told(row.fen, row.move);
  const Balance& shown =
      told.settled.has_value() ? told.settled->balance : told.balance;
  for (const std::string& part : row.given) {
    EXPECT_THAT(Texts(shown.concessions), HasSubstr(part)) << told.summary;
  }
  for (const std::string& part : row.gained) {
    EXPECT_THAT(Texts(shown.gains), HasSubstr(part)) << told.summary;
  }
}

INSTANTIATE_TEST_SUITE_P(Moves, Practice, ::testing::ValuesIn(kFacts),
                         testing_support::NameOfRow());

// Not every advance: the e-pawn keeps its guards, and nothing is said of king
// squares where the king is not.
TEST(MoveExplanation, DoesNotInventWeakSquares) {
  const MoveExplanation told =
      Told("rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1", "e4");
  EXPECT_EQ(Texts(told.balance.concessions).find("never again guard f3"),
            std::string::npos);
  EXPECT_FALSE(told.settled.has_value());
}

TEST(MoveExplanation, LooksPastAnEvenExchange) {
  const MoveExplanation told = Told(
      "r1bqkb1r/1ppp1ppp/p1n2n2/1B2p3/4P3/5N2/PPPP1PPP/RNBQ1RK1 w kq - 0 5",
      "Bxc6");
  ASSERT_TRUE(told.settled.has_value());
  EXPECT_EQ(told.settled->line.size(), 2U);
  // The pair is the price, the pawns what it buys.
  EXPECT_NE(Find(told.settled->balance.concessions, TermId::kBishopPair),
            nullptr);
  EXPECT_NE(Find(told.settled->balance.gains, TermId::kDoubledPawns), nullptr);
  // An even trade is not told as a piece won.
  EXPECT_EQ(
      Find(told.settled->balance.gains, TermId::kMaterial) == nullptr ||
          Find(told.settled->balance.concessions, TermId::kMaterial) != nullptr,
      true);
}

TEST(MoveExplanation, NamesTheReplyToFear) {
  // The queen goes where a pawn takes it.
  const MoveExplanation told = Told(
      "r1bqkb1r/pppp1ppp/2n2n2/4p3/2B1P3/5Q2/PPPP1PPP/RNB1K1NR w KQkq - 4 4",
      "c3", ExplainOptions());
  ASSERT_TRUE(told.proof.has_value());
  EXPECT_EQ(told.proof->line.front(), told.move);
  EXPECT_FALSE(told.reply_to_fear.has_value());
  const MoveExplanation blunder = Told(
      "r1bqkb1r/pppp1ppp/2n2n2/4p3/2B1P3/5Q2/PPPP1PPP/RNB1K1NR w KQkq - 4 4",
      "Qxf6", ExplainOptions());
  ASSERT_TRUE(blunder.reply_to_fear.has_value());
  EXPECT_EQ(blunder.reply_to_fear->side, Side::kBlack);
  EXPECT_GE(blunder.reply_to_fear->gain_cp, 500);
  EXPECT_THAT(blunder.summary, HasSubstr("Qxf6"));
  // Its line starts after the move.
  EXPECT_TRUE(IsLegal(blunder.after, blunder.reply_to_fear->line.front()));
}

TEST(MoveExplanation, SearchesNothingWhenStatic) {
  const MoveExplanation told = Told(kItalian, "g4");
  EXPECT_FALSE(told.proof.has_value());
  EXPECT_FALSE(told.reply_to_fear.has_value());
}

TEST(MoveExplanation, SaysThatTheGameIsOver) {
  const MoveExplanation told =
      Told("6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - 0 1", "Rd8#", ExplainOptions());
  EXPECT_THAT(told.summary, HasSubstr("Black is checkmated."));
}

// --- whatever the move ---

struct Play {
  Position position;
  Move move;
};

std::vector<Play> SomePlays(std::uint64_t seed, int count) {
  std::vector<Play> plays;
  std::mt19937_64 random(seed);
  testing_support::PlayPlausibly(seed, count, [&](const Position& position) {
    MoveList moves;
    LegalMoves(position, moves);
    if (!moves.empty()) {
      plays.push_back({position, moves[random() % moves.size()]});
    }
  });
  return plays;
}

Centipawns SumOf(const Balance& balance) {
  Centipawns sum = 0;
  for (const LedgerChange& change : balance.gains) sum += change.change_cp;
  for (const LedgerChange& change : balance.concessions) {
    sum += change.change_cp;
  }
  return sum;
}

void CheckBalance(const Balance& balance, Side side, const Checker& checker) {
  EXPECT_FALSE(balance.concessions.empty());
  for (const LedgerChange& change : balance.gains) {
    checker.CheckSentence(change.text, change.claims);
    EXPECT_EQ(Sign(side) * change.change_cp > 0, change.term.has_value());
  }
  for (const LedgerChange& change : balance.concessions) {
    checker.CheckSentence(change.text, change.claims);
    EXPECT_EQ(Sign(side) * change.change_cp < 0, change.term.has_value());
  }
}

void CheckTold(const MoveExplanation& told, const Assayer& assayer) {
  const Side side = told.position.side_to_move();
  EXPECT_EQ(told.score_before_cp, assayer.Score(told.position));
  EXPECT_EQ(told.score_after_cp, assayer.Score(told.after));
  EXPECT_EQ(SumOf(told.balance), told.score_after_cp - told.score_before_cp);
  Explanation holder(told.position);
  holder.claims = told.claims;
  const Checker checker(holder);
  for (const Claim& claim : told.claims) checker.CheckHolds(claim);
  checker.CheckSentence(told.summary, told.summary_claims);
  CheckBalance(told.balance, side, checker);
  if (told.settled.has_value()) {
    EXPECT_EQ(AfterLine(told.position, told.settled->line),
              told.settled->position);
    EXPECT_EQ(told.settled->score_cp, assayer.Score(told.settled->position));
    EXPECT_EQ(SumOf(told.settled->balance),
              told.settled->score_cp - told.score_before_cp);
    CheckBalance(told.settled->balance, side, checker);
  }
  for (const auto* plans : {&told.starts, &told.stops, &told.allows}) {
    for (const ToldPlan& plan : *plans) {
      EXPECT_EQ(plan.plan.side, plans == &told.starts ? side : Other(side));
      checker.CheckSentence(plan.text, plan.claims);
    }
  }
  if (told.reply_to_fear.has_value()) {
    checker.CheckSentence(told.reply_to_fear->text, told.reply_to_fear->claims);
  }
}

TEST(EveryMove, AddsUpAndStandsOnClaims) {
  const Assayer assayer;
  for (const Play& play : SomePlays(61, 500)) {
    if (::testing::Test::HasFailure()) return;
    SCOPED_TRACE(::testing::PrintToString(play.position) +
                 ToSan(play.position, play.move));
    CheckTold(ExplainMove(assayer, play.position, play.move, StaticOnly()),
              assayer);
  }
}

TEST(EveryMove, StandsOnClaimsWhenProved) {
  const Assayer assayer;
  ExplainOptions options;
  options.proof_nodes = 2000;
  int replies = 0;
  for (const Play& play : SomePlays(62, 150)) {
    if (::testing::Test::HasFailure()) return;
    SCOPED_TRACE(::testing::PrintToString(play.position) +
                 ToSan(play.position, play.move));
    const MoveExplanation told =
        ExplainMove(assayer, play.position, play.move, options);
    CheckTold(told, assayer);
    replies += told.reply_to_fear.has_value() ? 1 : 0;
  }
  EXPECT_GE(replies, 20);
}

Move Flipped(Move move) {
  if (move.is_promotion()) {
    return Move::Promotion(FlipRank(move.from()), FlipRank(move.to()),
                           move.promotion());
  }
  return Move(FlipRank(move.from()), FlipRank(move.to()), move.type());
}

std::vector<Centipawns> Values(const std::vector<LedgerChange>& changes,
                               int sign) {
  std::vector<Centipawns> values;
  for (const LedgerChange& change : changes) {
    values.push_back(sign * change.change_cp);
  }
  std::sort(values.begin(), values.end());
  return values;
}

TEST(EveryMove, IsTheSameForTheOtherSide) {
  const Assayer assayer;
  for (const Play& play : SomePlays(63, 300)) {
    if (::testing::Test::HasFailure()) return;
    SCOPED_TRACE(::testing::PrintToString(play.position) +
                 ToSan(play.position, play.move));
    const MoveExplanation told =
        ExplainMove(assayer, play.position, play.move, StaticOnly());
    const MoveExplanation swapped = ExplainMove(
        assayer, SwapColours(play.position), Flipped(play.move), StaticOnly());
    EXPECT_EQ(Values(told.balance.gains, 1), Values(swapped.balance.gains, -1));
    EXPECT_EQ(Values(told.balance.concessions, 1),
              Values(swapped.balance.concessions, -1));
    EXPECT_EQ(told.stops.size(), swapped.stops.size());
    EXPECT_EQ(told.allows.size(), swapped.allows.size());
  }
}

TEST(EveryMove, IsToldTheSameEachTime) {
  const Assayer assayer;
  ExplainOptions options;
  options.proof_nodes = 1500;
  for (const Play& play : SomePlays(64, 30)) {
    const MoveExplanation once =
        ExplainMove(assayer, play.position, play.move, options);
    const MoveExplanation again =
        ExplainMove(assayer, play.position, play.move, options);
    EXPECT_EQ(once.summary, again.summary);
    EXPECT_EQ(once.claims, again.claims);
  }
}

}  // namespace
}  // namespace assay
