// Edits of the board, and what they change.
#include "assay/explain/what_if.h"

#include <string>
#include <vector>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/notation/fen.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/explain/sentence_checker.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using ::testing::HasSubstr;
using testing_support::FromFen;

using Edits = std::vector<std::string>;

constexpr char kStart[] =
    "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1";

struct Made : testing_support::Row {
  const char* fen;
  Edits edits;
  const char* after;
};

const Made kMade[] = {
    {{"Move"},
     "4k3/8/8/8/8/5P2/8/4K3 w - - 0 1",
     {"f3-f2"},
     "4k3/8/8/8/8/8/5P2/4K3 w - - 0 1"},
    {{"Off"},
     "4k3/8/8/8/2B5/8/8/4K3 w - - 0 1",
     {"off-c4"},
     "4k3/8/8/8/8/8/8/4K3 w - - 0 1"},
    {{"On"},
     "4k3/8/8/8/8/8/8/4K3 w - - 0 1",
     {"on-Nd5", "on-pa7"},
     "4k3/p7/8/3N4/8/8/8/4K3 w - - 0 1"},
    {{"Pass"},
     kStart,
     {"pass"},
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR b KQkq - 0 1"},
    {{"Swap"},
     "4k3/8/8/8/8/5P2/8/4K3 w - - 0 1",
     {"swap"},
     "4k3/8/5p2/8/8/8/8/4K3 b - - 0 1"},
    {{"SwapTwice"}, kStart, {"swap", "swap"}, kStart},
    // The right to castle goes with the rook, and does not come back.
    {{"RookAwayAndBack"}, kStart, {"off-h1", "on-Rh1"}, kStart},
    {{"RookGone"},
     kStart,
     {"off-h1"},
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBN1 w Qkq - 0 1"},
    // Only the position after the last edit has to be legal.
    {{"KingAwayAndBack"},
     "4k3/8/8/8/8/8/8/4K3 w - - 0 1",
     {"off-e1", "on-Kg1"},
     "4k3/8/8/8/8/8/8/6K1 w - - 0 1"},
    {{"None"}, kStart, {}, kStart},
};

class EditsMade : public ::testing::TestWithParam<Made> {};

TEST_P(EditsMade, LeadToThePosition) {
  const auto edited = ApplyEdits(FromFen(GetParam().fen), GetParam().edits);
  ASSERT_TRUE(edited.ok()) << edited.status();
  EXPECT_EQ(ToFen(edited->position), GetParam().after);
}

INSTANTIATE_TEST_SUITE_P(Edits, EditsMade, ::testing::ValuesIn(kMade),
                         testing_support::NameOfRow());

struct Refused : testing_support::Row {
  const char* fen;
  Edits edits;
  std::vector<std::string> fields;
  const char* reason;
  const char* found;  // parts
};

constexpr char kKings[] = "4k3/8/8/8/8/8/8/4K3 w - - 0 1";
const Refused kRefused[] = {
    {{"Nonsense"}, kKings, {"pass", "e4"}, {"edits[1]"}, "not an edit", "e4"},
    {{"EveryUnreadableOne"},
     kKings,
     {"off-z9", "pass", "on-Xd5", "a1-a1"},
     {"edits[0]", "edits[2]", "edits[3]"},
     "not an edit",
     "off-z9"},
    {{"NothingThere"},
     kKings,
     {"off-c4"},
     {"edits[0]"},
     "nothing stands there",
     "c4 is empty"},
    {{"NothingToMove"},
     kKings,
     {"pass", "f3-f2"},
     {"edits[1]"},
     "nothing stands there",
     "f3 is empty"},
    {{"SquareTaken"},
     kStart,
     {"e2-d2"},
     {"edits[0]"},
     "the square is taken",
     "a white pawn on d2"},
    {{"NoKing"},
     kKings,
     {"pass", "off-e1"},
     {"edits[1]"},
     "leaves no legal position",
     "0"},
    {{"TwoKings"},
     kKings,
     {"on-Ka1"},
     {"edits[0]"},
     "leaves no legal position",
     "2"},
    {{"PawnOnTheLastRank"},
     kKings,
     {"on-Pa8"},
     {"edits[0]"},
     "leaves no legal position",
     "a8"},
    // The side not to move stands in check: the pass is what did it.
    {{"PassInCheck"},
     "4k3/8/8/8/8/8/4r3/4K3 w - - 0 1",
     {"pass"},
     {"edits[0]"},
     "leaves no legal position",
     ""},
};

class EditsRefused : public ::testing::TestWithParam<Refused> {};

TEST_P(EditsRefused, AreExplained) {
  const auto edited = ApplyEdits(FromFen(GetParam().fen), GetParam().edits);
  EXPECT_EQ(edited.status().code(), absl::StatusCode::kInvalidArgument);
  const std::vector<Problem> problems = ProblemsOf(edited.status());
  ASSERT_EQ(problems.size(), GetParam().fields.size()) << edited.status();
  for (std::size_t i = 0; i < problems.size(); ++i) {
    EXPECT_EQ(problems[i].field, GetParam().fields[i]);
    EXPECT_THAT(problems[i].reason, HasSubstr(GetParam().reason));
    EXPECT_NE(problems[i].expected, "");
  }
  EXPECT_THAT(problems[0].found, HasSubstr(GetParam().found));
}

INSTANTIATE_TEST_SUITE_P(Edits, EditsRefused, ::testing::ValuesIn(kRefused),
                         testing_support::NameOfRow());

TEST(Edits, AreAtMostSixtyFour) {
  const Position position = FromFen(kStart);
  EXPECT_TRUE(ApplyEdits(position, Edits(64, "pass")).ok());
  const auto status = ApplyEdits(position, Edits(65, "pass")).status();
  EXPECT_EQ(ProblemsOf(status).at(0).field, "edits");
  EXPECT_FALSE(ApplyEdits(position, {std::string(5000, 'x')}).ok());
}

// Common practice, no source: the f-pawn at home shelters the king and leaves
// the knight its square.
TEST(WhatIf, TellsThePriceOfAnEarlyFPawn) {
  const Position position = FromFen(
      "r1bqk2r/pppp1ppp/2n2n2/2b1p3/4P3/2NP1P2/PPP1B1PP/R1BQK1NR w KQkq - 0 6");
  const auto told = AskWhatIf(Assayer(), position, {"f3-f2"});
  ASSERT_TRUE(told.ok());
  EXPECT_GT(told->score_after_cp, told->score_before_cp);
  EXPECT_THAT(told->summary,
              HasSubstr("With the pawn back on f2 White would be "));
  bool square = false;
  for (const LedgerChange& change : told->changes) {
    square |= change.term == TermId::kKnightSquareTaken && change.change_cp > 0;
  }
  EXPECT_TRUE(square);
}

// Of two rooks, the one on the open file adds more than the shut-in one.
TEST(WhatIf, AttributesMoreToTheBetterPiece) {
  const Position position =
      FromFen("3r2k1/pp3ppp/8/8/8/8/PP3PPP/R2R2K1 w - - 0 1");
  const auto told = AskWhatIf(Assayer(), position, {});
  ASSERT_TRUE(told.ok());
  Centipawns a1 = 0;
  Centipawns d1 = 0;
  for (const Attribution& attribution : told->attributions) {
    if (attribution.square == kA1) a1 = attribution.beyond_material_cp;
    if (attribution.square == kD1) d1 = attribution.beyond_material_cp;
    EXPECT_NE(attribution.square, kG1);
  }
  EXPECT_GT(d1, a1);
  EXPECT_EQ(told->attributions.size(), 13U);
  EXPECT_TRUE(told->changes.empty());
}

TEST(WhatIf, AddsUpAndStandsOnClaims) {
  const Assayer assayer;
  int asked = 0;
  testing_support::PlayPlausibly(71, 300, [&](const Position& position) {
    if (::testing::Test::HasFailure()) return;
    SCOPED_TRACE(::testing::PrintToString(position));
    const Bitboard units =
        position.Occupied() & ~position.Pieces(PieceKind::kKing);
    if (units == 0) return;
    const auto told =
        AskWhatIf(assayer, position, {"off-" + ToString(First(units))});
    if (!told.ok()) return;  // a pinned one, say
    ++asked;
    Centipawns sum = 0;
    Explanation after(told->after);
    after.claims = told->claims;
    const testing_support::Checker checker(after);
    for (const Claim& claim : told->claims) checker.CheckHolds(claim);
    Explanation before(told->position);
    before.claims = told->claims_before;
    const testing_support::Checker checker_before(before);
    for (const Claim& claim : told->claims_before) {
      checker_before.CheckHolds(claim);
    }
    for (const LedgerChange& change : told->changes) {
      sum += change.change_cp;
      EXPECT_FALSE(change.claims.empty() && change.claims_before.empty());
    }
    EXPECT_EQ(sum, assayer.Score(told->after) - assayer.Score(position));
  });
  EXPECT_GE(asked, 250);
}

}  // namespace
}  // namespace assay
