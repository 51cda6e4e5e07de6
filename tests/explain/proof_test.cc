// Verdicts that search stands behind. Positions are our own.
#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <string>

#include "assay/explain/assayer.h"
#include "assay/explain/text.h"
#include "assay/rules/draw.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"
#include "tests/support/static_only.h"

namespace assay {
namespace {

using testing_support::FromFen;

Explanation Proved(const char* fen, std::uint64_t nodes = 4000) {
  ExplainOptions options;
  options.proof_nodes = nodes;
  return Assayer().Explain(FromFen(fen), options);
}

// The first claim of a kind among a caution's; null where it has none.
const Claim* Find(const Explanation& explanation, const Caution& caution,
                  ClaimKind kind) {
  for (const std::uint32_t ref : caution.claims) {
    if (explanation.claims[ref].kind == kind) return &explanation.claims[ref];
  }
  return nullptr;
}

// Material in White's view by the values that the LINE claim is defined with.
int Material(const Position& position) {
  int sum = 0;
  for (const Square square : Each(position.Occupied())) {
    const Piece piece = position.At(square);
    constexpr int kValues[] = {100, 325, 325, 500, 975, 0};
    sum += Sign(piece.side()) * kValues[Index(piece.kind())];
  }
  return sum;
}

Position After(Position position, const std::vector<Move>& line) {
  for (const Move move : line) position = position.After(move);
  return position;
}

TEST(ProvedVerdict, IsLeftOutOnRequest) {
  const Explanation explanation =
      Assayer().Explain(Position::Initial(), testing_support::StaticOnly());
  EXPECT_FALSE(explanation.proof.has_value());
  EXPECT_FALSE(explanation.verdict.quiet);
  EXPECT_TRUE(explanation.threats.empty());
  EXPECT_TRUE(explanation.temptations.empty());
  EXPECT_FALSE(explanation.advice.has_value());
}

TEST(ProvedVerdict, HasADefaultBudget) {
  const Explanation explanation = Assayer().Explain(Position::Initial());
  ASSERT_TRUE(explanation.proof.has_value());
  EXPECT_GE(explanation.proof->nodes, 1000U);
  EXPECT_LE(explanation.proof->nodes, kDefaultProofNodes);
  EXPECT_TRUE(explanation.advice.has_value());
}

TEST(ProvedVerdict, IsQuietWhereCountAndSearchAgree) {
  const Explanation explanation = Proved(
      "r1bq1rk1/pp2bppp/2n1pn2/2pp4/2PP4/2N1PN2/PP2BPPP/R1BQ1RK1 w - - 0 9");
  ASSERT_TRUE(explanation.proof.has_value());
  EXPECT_TRUE(explanation.verdict.quiet);
  EXPECT_TRUE(explanation.cautions.empty());
}

struct Tactic : testing_support::Row {
  const char* fen;
  Side wins;
};

constexpr Tactic kTactics[] = {
    {{"RookTakesALooseKnight"},
     "4k3/ppp2ppp/8/3n4/8/8/PPP2PPP/3RK3 w - - 0 1",
     Side::kWhite},
    {{"KnightForksKingAndQueen"},
     "q3k3/ppp2ppp/8/3N4/8/8/PP3PPP/4K3 w - - 0 1",
     Side::kWhite},
    {{"BishopPinsTheQueen"},
     "6k1/pp3ppp/8/8/8/2b5/PP3PPP/4QK2 b - - 0 1",
     Side::kBlack},
};

class Tactics : public ::testing::TestWithParam<Tactic> {};

TEST_P(Tactics, LeadWithTheLineThatDecides) {
  const Explanation explanation = Proved(GetParam().fen);
  EXPECT_FALSE(explanation.verdict.quiet);
  ASSERT_FALSE(explanation.cautions.empty());
  const Caution& caution = explanation.cautions.front();
  EXPECT_TRUE(caution.leads);
  EXPECT_EQ(explanation.summary.substr(0, caution.text.size()), caution.text);
  const Claim* line = Find(explanation, caution, ClaimKind::kLine);
  ASSERT_NE(line, nullptr);
  const Position before = explanation.position;
  EXPECT_EQ(line->count * Sign(line->side),
            Material(After(before, line->line)) - Material(before));
  EXPECT_GE(line->count, 75);
  EXPECT_EQ(line->side, GetParam().wins);
  // The same from the other side.
  ExplainOptions options;
  options.proof_nodes = 4000;
  const Explanation swapped = Assayer().Explain(SwapColours(before), options);
  EXPECT_FALSE(swapped.verdict.quiet);
}

INSTANTIATE_TEST_SUITE_P(Positions, Tactics, ::testing::ValuesIn(kTactics),
                         testing_support::NameOfRow());

TEST(ProvedVerdict, SaysMateInMoves) {
  const Explanation explanation = Proved("6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1");
  EXPECT_EQ(explanation.verdict.nag, 20);
  EXPECT_EQ(explanation.verdict.text, "White mates in 1 move.");
  EXPECT_EQ(explanation.proof->mate_in, 1);
  EXPECT_EQ(explanation.proof->score_cp, 0);
  const Claim* mate =
      Find(explanation, explanation.cautions.front(), ClaimKind::kMateIn);
  ASSERT_NE(mate, nullptr);
  EXPECT_EQ(mate->count, 1);
  EXPECT_TRUE(IsCheckmate(After(explanation.position, mate->line)));
}

TEST(ProvedVerdict, LeavesFinishedGamesAlone) {
  for (const char* fen :
       {"7k/6Q1/6K1/8/8/8/8/8 b - - 0 1", "7k/5Q2/6K1/8/8/8/8/8 b - - 0 1",
        "8/8/4k3/8/8/3BK3/8/8 w - - 0 1"}) {
    EXPECT_FALSE(Proved(fen).proof.has_value()) << fen;
  }
}

TEST(ProvedVerdict, EndsEarlyWhenCancelled) {
  const std::atomic<bool> cancelled{true};
  ExplainOptions options;
  options.proof_nodes = 4000000000ULL;
  options.cancelled = &cancelled;
  const Explanation explanation =
      Assayer().Explain(Position::Initial(), options);
  EXPECT_FALSE(explanation.proof->complete);
  EXPECT_FALSE(explanation.summary.empty());
}

TEST(ProvedVerdict, IsTheSameEveryTime) {
  constexpr const char* kFen =
      "2rq1rk1/pp4pp/4pn2/2b3B1/2Bnp3/2N5/PP3PPP/R2Q1RK1 w - - 4 16";
  EXPECT_EQ(ToText(Proved(kFen)), ToText(Proved(kFen)));
}

}  // namespace
}  // namespace assay
