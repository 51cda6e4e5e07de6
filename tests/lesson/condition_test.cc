// Conditions as a user writes them, on positions whose answer is plain.
#include "assay/lesson/condition.h"

#include <string>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

using testing_support::FromFen;

// The French chain (rams d4-d5, e5-e6): closed by definition; White to move.
constexpr char kChain[] =
    "r1bq1rk1/pp1nbppp/2n1p3/2ppP3/3P1P2/2P1BN2/PP1NB1PP/R2Q1RK1 w - - 0 10";
// Doubled c-pawns of White, a queen more for Black.
constexpr char kDoubled[] = "q3k3/8/8/8/2P5/2P5/8/4K3 b - - 0 1";

bool Holds(const std::string& text, const char* fen) {
  const absl::StatusOr<Condition> condition = Condition::Parse(text);
  EXPECT_TRUE(condition.ok()) << condition.status();
  if (!condition.ok()) return false;
  ExplainOptions options;
  options.static_only = true;
  options.all_claims = condition->needs_all_claims();
  return condition->Holds(Assayer().Explain(FromFen(fen), options));
}

TEST(Condition, FindsWhatIsThere) {
  EXPECT_TRUE(Holds("centre=tension", kChain) ||
              Holds("centre=closed", kChain));
  EXPECT_TRUE(Holds("structure=isolated-queen",
                    "r1bq1rk1/pp2bppp/2n1pn2/8/3P4/2NB1N2/PP3PPP/R1BQR1K1 w - "
                    "- 0 11"));
  EXPECT_TRUE(Holds("claim=doubled@white", kDoubled));
  EXPECT_TRUE(Holds("claim=doubled", kDoubled));
  EXPECT_TRUE(Holds("term=doubled_pawns@white", kDoubled));
  EXPECT_TRUE(Holds("term=doubled-pawns@waiter", kDoubled));
  EXPECT_TRUE(Holds("verdict>=decisive@black", kDoubled));
  EXPECT_TRUE(Holds("score<-300", kDoubled));
  EXPECT_TRUE(Holds("move=black", kDoubled));
  EXPECT_TRUE(Holds("not:verdict=equal", kDoubled));
}

TEST(Condition, LeavesOutWhatIsNot) {
  EXPECT_FALSE(Holds("claim=doubled@black", kDoubled));
  EXPECT_FALSE(Holds("claim=doubled@mover", kDoubled));
  EXPECT_FALSE(Holds("claim=doubled", kChain));
  EXPECT_FALSE(Holds("verdict>=slight@white", kDoubled));
  EXPECT_FALSE(Holds("score>=0", kDoubled));
  EXPECT_FALSE(Holds("centre=closed", kDoubled));
  EXPECT_FALSE(Holds("not:move=black", kDoubled));
}

TEST(Condition, SaysWhatItDoesNotKnow) {
  for (const char* text :
       {"", "closed", "centre", "centre=", "centre=locked", "claim=nice",
        "plan=win", "plan=siege:soon", "verdict>=slight", "verdict=good@white",
        "score>many", "move=me", "centre>closed", "claim=doubled@me",
        "colour=red", "claim=doubled:in_time", "=closed"}) {
    EXPECT_FALSE(Condition::Parse(text).ok()) << text;
  }
}

}  // namespace
}  // namespace assay
