// The verdict's NAG (PGN standard of 1994, section 10) by the score, and the
// ends of games (FIDE Laws 5.1, 5.2; numbers from memory).
#include "assay/explain/verdict.h"

#include "assay/explain/assayer.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/from_pieces.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"
#include "tests/support/static_only.h"

namespace assay {
namespace {

using testing_support::StaticOnly;

using testing_support::FromPieces;

// An evaluator that counts the move alone, so that a position's score can be
// chosen.
Assayer OnlyTheMove(Centipawns value) {
  Weights weights;
  for (const WeightField& field : WeightFields()) {
    weights.*(field.field) = {0, 0};
  }
  weights.tempo = {value, value};
  return Assayer(weights);
}

struct CutOff : testing_support::Row {
  Centipawns score_cp;
  int nag;
  const char* text;
};

constexpr CutOff kCutOffs[] = {
    {{"Nothing"}, 0, 11, "The position is roughly equal and quiet."},
    {{"JustEqual"}, 29, 11, "The position is roughly equal and quiet."},
    {{"JustSlight"}, 30, 14, "White is slightly better."},
    {{"StillSlight"}, 89, 14, "White is slightly better."},
    {{"JustModerate"}, 90, 16, "White is clearly better."},
    {{"StillModerate"}, 219, 16, "White is clearly better."},
    {{"JustDecisive"}, 220, 18, "White has a decisive advantage."},
    {{"StillDecisive"}, 499, 18, "White has a decisive advantage."},
    {{"JustCrushing"}, 500, 20, "White has a crushing advantage."},
    {{"FarBeyond"}, 9999, 20, "White has a crushing advantage."},
};

class CutOffs : public ::testing::TestWithParam<CutOff> {
 protected:
  static constexpr char kPosition[] = "Kg1 a2 h2 v Kg8 a7 h7";
};

TEST_P(CutOffs, DecideTheNag) {
  const CutOff& row = GetParam();
  const Explanation explanation =
      OnlyTheMove(row.score_cp).Explain(FromPieces(kPosition), StaticOnly());
  EXPECT_EQ(explanation.score_cp, row.score_cp);
  EXPECT_EQ(explanation.verdict.nag, row.nag);
  EXPECT_EQ(explanation.verdict.text, row.text);
  EXPECT_FALSE(explanation.verdict.over);
  EXPECT_FALSE(explanation.verdict.claims.empty());
  EXPECT_FALSE(explanation.summary_claims.empty());
  EXPECT_EQ(explanation.verdict.favours.has_value(), row.nag >= 14);
}

TEST_P(CutOffs, DecideItForBlackToo) {
  const CutOff& row = GetParam();
  const Explanation explanation =
      OnlyTheMove(row.score_cp)
          .Explain(SwapColours(FromPieces(kPosition)), StaticOnly());
  EXPECT_EQ(explanation.score_cp, -row.score_cp);
  const bool balanced = row.nag < 14;
  EXPECT_EQ(explanation.verdict.nag, balanced ? row.nag : row.nag + 1);
  if (!balanced) {
    EXPECT_EQ(explanation.verdict.favours, Side::kBlack);
    EXPECT_THAT(explanation.verdict.text, ::testing::StartsWith("Black "));
  }
}

INSTANTIATE_TEST_SUITE_P(Scores, CutOffs, ::testing::ValuesIn(kCutOffs),
                         testing_support::NameOfRow());

struct Balance : testing_support::Row {
  Centipawns white;
  Centipawns black;
  const char* position;
  int nag;
};

constexpr char kQuiet[] = "Kg1 a2 h2 v Kg8 a7 h7";
constexpr char kTension[] = "Kg1 d4 e3 v Kg8 d5 e5";

// What cancels: 60 centipawns a side are active, 120 unclear.
constexpr Balance kBalances[] = {
    {{"NothingOnEitherSide"}, 0, 0, kQuiet, 11},
    {{"OneSided"}, 29, 0, kQuiet, 11},
    {{"JustQuiet"}, 59, 59, kQuiet, 11},
    {{"JustActive"}, 60, 60, kQuiet, 12},
    {{"LesserSideDecides"}, 80, 59, kQuiet, 11},
    {{"StillActive"}, 119, 119, kQuiet, 12},
    {{"JustUnclear"}, 120, 120, kQuiet, 13},
    {{"TensionIsActive"}, 0, 0, kTension, 12},
    {{"TensionMayBeUnclear"}, 130, 120, kTension, 13},
};

class Balances : public ::testing::TestWithParam<Balance> {};

TEST_P(Balances, AreQuietActiveOrUnclear) {
  const Balance& row = GetParam();
  std::vector<Reason> reasons;
  for (const Centipawns value : {row.white, -row.black}) {
    if (value == 0) continue;
    Reason reason;
    reason.value_cp = value;
    reasons.push_back(reason);
  }
  const Position position = FromPieces(row.position);
  ClaimTable table;
  const Verdict verdict =
      FindVerdict(Facts(position), row.white - row.black, reasons, {}, table);
  EXPECT_EQ(verdict.nag, row.nag);
  EXPECT_FALSE(verdict.favours.has_value());
}

INSTANTIATE_TEST_SUITE_P(Reasons, Balances, ::testing::ValuesIn(kBalances),
                         testing_support::NameOfRow());

struct Over : testing_support::Row {
  const char* position;
  int nag;
  const char* text;
  std::vector<ClaimKind> claims;
};

const Over kOvers[] = {
    {{"MateByWhite"},
     "Kg6 Qg7 v Kg8, Black to move",
     20,
     "Black is checkmated.",
     {ClaimKind::kInCheck, ClaimKind::kNoLegalMove}},
    {{"MateByBlack"},
     "rnb1kbnr/pppp1ppp/8/4p3/6Pq/5P2/PPPPP2P/RNBQKBNR w KQkq - 1 3",
     21,
     "White is checkmated.",
     {ClaimKind::kInCheck, ClaimKind::kNoLegalMove}},
    {{"MateAgainstMoreMaterial"},
     "Kg1 Qa3 Qa4 f2 g2 h2 v Kg8 Re1",
     21,
     "White is checkmated.",
     {ClaimKind::kInCheck, ClaimKind::kNoLegalMove}},
    {{"Stalemate"},
     "Kg6 Qf7 v Kh8, Black to move",
     10,
     "Black is stalemated: a draw.",
     {ClaimKind::kNoLegalMove}},
    {{"StalemateOfWhite"},
     "Ka1 v Kg6 Qb3",
     10,
     "White is stalemated: a draw.",
     {ClaimKind::kNoLegalMove}},
    {{"DeadByMaterial"},
     "Kg1 Bc1 v Kg8",
     10,
     "Drawn: neither side can mate with what is left.",
     {ClaimKind::kInsufficient}},
};

class Overs : public ::testing::TestWithParam<Over> {};

TEST_P(Overs, SayTheResultFirst) {
  const Over& row = GetParam();
  const Explanation explanation =
      Assayer().Explain(FromPieces(row.position), StaticOnly());
  EXPECT_EQ(explanation.verdict.nag, row.nag);
  EXPECT_EQ(explanation.verdict.text, row.text);
  EXPECT_TRUE(explanation.verdict.over);
  EXPECT_EQ(explanation.verdict.favours.has_value(), row.nag != 10);
  if (row.nag != 10) {
    EXPECT_EQ(explanation.verdict.favours,
              row.nag == 20 ? Side::kWhite : Side::kBlack);
  }
  std::vector<ClaimKind> kinds;
  for (const std::uint32_t ref : explanation.verdict.claims) {
    kinds.push_back(explanation.claims[ref].kind);
  }
  EXPECT_EQ(kinds, row.claims);
  EXPECT_EQ(explanation.summary, row.text);
  EXPECT_TRUE(explanation.cautions.empty());
}

INSTANTIATE_TEST_SUITE_P(Positions, Overs, ::testing::ValuesIn(kOvers),
                         testing_support::NameOfRow());

// With each of these there is a mate, though it may take help.
TEST(Verdict, ClaimsNoDeadPositionWhereAMateExists) {
  for (const char* text : {"Kg1 Nb1 Nc3 v Kg8", "Kg1 Nb1 v Kg8 Nb8",
                           "Kg1 Bc1 v Kg8 Bc8", "Kg1 a2 v Kg8"}) {
    EXPECT_FALSE(Assayer().Explain(FromPieces(text), StaticOnly()).verdict.over)
        << text;
  }
}

TEST(Verdict, OfTheInitialPositionIsEqual) {
  const Explanation explanation =
      Assayer().Explain(Position::Initial(), StaticOnly());
  EXPECT_EQ(explanation.verdict.nag, 11);
  EXPECT_FALSE(explanation.verdict.claims.empty());
  EXPECT_FALSE(explanation.summary_claims.empty());
}

}  // namespace
}  // namespace assay
