// How often the planner names what handbooks teach. The rows were written
// before the planner and are not changed for it (tests/plans/*.tsv name their
// sources); the floors below are what it reaches, so that no change loses any
// of it. The aim is nine rows in ten among the first three, six in ten first.
#include <gtest/gtest.h>

#include <string>

#include "assay/notation/fen.h"
#include "tests/plans/handbook_rows.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

using testing_support::HandbookRow;

// The column of handbook.tsv with other ways to name as good a plan.
constexpr std::size_t kAlso = 7;

struct Tally {
  int rows = 0;
  int first = 0;
  int in_three = 0;
};

// The place of the taught plan among the side's; 0 where it is not named.
int PlaceOf(const HandbookRow& row) {
  const Position position = *PositionFromFen(row.fen());
  const Facts facts(position);
  const Plans plans = FindPlans(facts, Weights(), 3);
  const std::vector<Plan>& own = plans.Of(row.side());
  for (std::size_t i = 0; i < own.size(); ++i) {
    for (const std::string& way : row.Ways(kAlso)) {
      if (testing_support::IsTaught(own[i], way)) {
        return static_cast<int>(i) + 1;
      }
    }
  }
  return 0;
}

Tally TallyOf(const char* file) {
  Tally tally;
  for (const HandbookRow& row :
       testing_support::ReadRows(std::string(ASSAY_PLANS_DIR) + "/" + file)) {
    const int place = PlaceOf(row);
    ++tally.rows;
    if (place == 1) ++tally.first;
    if (place > 0) ++tally.in_three;
  }
  return tally;
}

TEST(Handbook, PlansAreNamedAsOftenAsBefore) {
  const Tally tally = TallyOf("handbook.tsv");
  std::printf("of %d rows: first %d, in three %d\n", tally.rows, tally.first,
              tally.in_three);
  ASSERT_EQ(tally.rows, 113);
  EXPECT_GE(tally.first, 79);
  EXPECT_GE(tally.in_three, 102);
}

TEST(CommonPractice, PlansAreNamedAsOftenAsBefore) {
  const Tally tally = TallyOf("common_practice.tsv");
  std::printf("of %d rows: first %d, in three %d\n", tally.rows, tally.first,
              tally.in_three);
  ASSERT_EQ(tally.rows, 17);
  EXPECT_GE(tally.first, 9);
  EXPECT_GE(tally.in_three, 11);
}

}  // namespace
}  // namespace assay
