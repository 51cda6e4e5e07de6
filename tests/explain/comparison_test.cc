// Moves and positions side by side, and lines as a course of events.
#include "assay/explain/comparison.h"

#include <string>
#include <vector>

#include "assay/explain/course.h"
#include "assay/notation/san.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/explain/sentence_checker.h"
#include "tests/support/printers.h"
#include "tests/support/static_only.h"

namespace assay {
namespace {

using ::testing::HasSubstr;
using ::testing::StartsWith;
using testing_support::Checker;
using testing_support::FromFen;
using testing_support::StaticOnly;

constexpr char kItalian[] =
    "r1bqk1nr/pppp1ppp/2n5/2b1p3/2B1P3/5N2/PPPP1PPP/RNBQK2R w KQkq - 4 4";

std::vector<Move> Line(const Position& start,
                       const std::vector<std::string>& sans) {
  std::vector<Move> line;
  Position at = start;
  for (const std::string& san : sans) {
    const absl::StatusOr<Move> move = ParseMove(at, san);
    EXPECT_TRUE(move.ok()) << san;
    line.push_back(*move);
    at = at.After(*move);
  }
  return line;
}

std::vector<Move> Candidates(const Position& position,
                             const std::vector<std::string>& sans) {
  std::vector<Move> moves;
  for (const std::string& san : sans) {
    moves.push_back(*ParseMove(position, san));
  }
  return moves;
}

void CheckClaims(const Position& position, const std::vector<Claim>& claims,
                 const std::string& decides, bool alone) {
  Explanation holder(position);
  holder.claims = claims;
  const Checker checker(holder);
  ClaimRefs all;
  for (std::size_t i = 0; i < claims.size(); ++i) {
    checker.CheckHolds(claims[i]);
    all.push_back(static_cast<std::uint32_t>(i));
  }
  if (alone) checker.CheckSentence(decides, all);
}

TEST(Comparison, PrefersCastlingToGivingTheBishop) {
  const Position position = FromFen(kItalian);
  const Comparison told =
      Compare(Assayer(), position, Candidates(position, {"Bxf7+", "O-O"}), {});
  ASSERT_EQ(told.explanations.size(), 2U);
  EXPECT_THAT(told.decides, StartsWith("4. O-O is better than 4. Bxf7+"));
  CheckClaims(position, told.claims, told.decides, true);
}

TEST(Comparison, DoesNotDependOnTheOrder) {
  const Position position = FromFen(kItalian);
  const std::string one =
      Compare(Assayer(), position, Candidates(position, {"O-O", "Bxf7+"}), {})
          .decides;
  const std::string other =
      Compare(Assayer(), position, Candidates(position, {"Bxf7+", "O-O"}), {})
          .decides;
  EXPECT_EQ(one, other);
}

TEST(Comparison, ShowsEachTermsSum) {
  const Position position = FromFen(kItalian);
  const Comparison told =
      Compare(Assayer(), position, Candidates(position, {"c3", "d3", "Nc3"}),
              {}, StaticOnly());
  ASSERT_FALSE(told.by_term.empty());
  std::vector<Centipawns> sums(3, 0);
  for (const TermComparison& row : told.by_term) {
    ASSERT_EQ(row.value_cp.size(), 3U);
    EXPECT_EQ(row.title, Info(row.term).title);
    for (int i = 0; i < 3; ++i) sums[i] += row.value_cp[i];
  }
  for (int i = 0; i < 3; ++i) {
    EXPECT_EQ(sums[i], told.explanations[i].score_cp);
  }
}

TEST(Comparison, SaysWhereLittleSeparatesThem) {
  const Position position = FromFen(kItalian);
  const std::vector<Position> same{position};
  const Comparison told = Compare(Assayer(), position, {}, same, StaticOnly());
  EXPECT_THAT(told.decides, StartsWith("Little separates the first position "
                                       "and the second position"));
}

// Common practice, no source: an isolated queen's pawn of Black's is something
// that White has.
TEST(Comparison, TellsPositionsApart) {
  const Position weak =
      FromFen("r2q1rk1/pp2bppp/2n1bn2/3p4/8/2N1PN2/PP1BBPPP/R2Q1RK1 w - - 0 1");
  const Position sound =
      FromFen("r2q1rk1/pp1bbppp/2n1pn2/8/8/2N1PN2/PP1BBPPP/R2Q1RK1 w - - 0 1");
  const Comparison told = Compare(Assayer(), weak, {}, {sound}, StaticOnly());
  ASSERT_EQ(told.claims_of_others.size(), 1U);
  CheckClaims(weak, told.claims, told.decides, false);
  CheckClaims(sound, told.claims_of_others[0], told.decides, false);
  EXPECT_FALSE(told.decides.empty());
}

// --- courses ---

void CheckCourse(const Position& start, const Course& course) {
  Explanation holder(start);
  holder.claims = course.claims;
  const Checker checker(holder);
  for (const Claim& claim : course.claims) checker.CheckHolds(claim);
  for (const Turn& turn : course.turns) {
    checker.CheckSentence(turn.text, turn.claims);
  }
}

bool Has(const Course& course, Turn::Kind kind, std::size_t ply) {
  for (const Turn& turn : course.turns) {
    if (turn.kind == kind && turn.ply == ply) return true;
  }
  return false;
}

// The fool's mate: the second advance is where it turns.
TEST(Course, FindsTheMoveThatLost) {
  const Position start = Position::Initial();
  const std::vector<Move> line = Line(start, {"f3", "e5", "g4", "Qh4#"});
  ExplainOptions options;
  options.proof_nodes = 4000;
  const Course course = FollowLine(Assayer(), start, line, options);
  CheckCourse(start, course);
  EXPECT_TRUE(Has(course, Turn::Kind::kVerdict, 2));
  for (const Turn& turn : course.turns) {
    if (turn.kind == Turn::Kind::kVerdict && turn.ply == 2) {
      EXPECT_THAT(turn.text, HasSubstr("Black mates in 1 move"));
    }
  }
}

// The centre is closed by e5, and told where the exchange is over.
TEST(Course, FindsWhereTheStructureChanged) {
  const Position start =
      FromFen("rnbqkbnr/ppp2ppp/4p3/3p4/3PP3/8/PPP2PPP/RNBQKBNR w KQkq - 0 3");
  const std::vector<Move> exchange = Line(start, {"exd5", "exd5", "Nf3"});
  const Course exchanged = FollowLine(Assayer(), start, exchange, StaticOnly());
  CheckCourse(start, exchanged);
  EXPECT_FALSE(Has(exchanged, Turn::Kind::kStructure, 0));
  EXPECT_TRUE(Has(exchanged, Turn::Kind::kStructure, 1));
  const std::vector<Move> advance = Line(start, {"e5", "c5"});
  const Course closed = FollowLine(Assayer(), start, advance, StaticOnly());
  CheckCourse(start, closed);
  EXPECT_TRUE(Has(closed, Turn::Kind::kStructure, 0));
}

TEST(Course, OfNoMovesHasNoTurns) {
  const Position start = Position::Initial();
  EXPECT_TRUE(FollowLine(Assayer(), start, {}, StaticOnly()).turns.empty());
}

}  // namespace
}  // namespace assay
