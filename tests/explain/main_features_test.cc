// The first reason is what a strong player would name first. The positions in
// main_features.tsv are ours, each with the feature that the book named beside
// it, or common practice, holds to be the main one; they were written before
// the rule of ranking.h.
#include <map>
#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "gtest/gtest.h"
#include "tests/explain/motif_rows.h"
#include "tests/support/golden_files.h"
#include "tests/support/printers.h"
#include "tests/support/static_only.h"

namespace assay {
namespace {

using testing_support::ContentOf;
using testing_support::Split;
using testing_support::StaticOnly;

struct FeatureRow {
  std::string name;
  std::string fen;
  std::string side;
  std::vector<std::string> topics;
};

std::vector<FeatureRow> ReadRows() {
  std::vector<FeatureRow> rows;
  for (const std::string& line : Split(ContentOf(ASSAY_MAIN_FEATURES), '\n')) {
    if (line.empty() || line[0] == '#') continue;
    const std::vector<std::string> columns = Split(line, '\t');
    EXPECT_EQ(columns.size(), 5U) << line;
    if (columns.size() != 5) continue;
    EXPECT_FALSE(columns[4].empty()) << line << ": who says so?";
    rows.push_back(
        {columns[0], columns[1], columns[2], Split(columns[3], '/')});
  }
  return rows;
}

bool IsOf(Topic topic, const std::string& name) {
  static const std::map<std::string, Topic> kNames = {
      {"material", Topic::kMaterial},
      {"bishop_pair", Topic::kBishopPair},
      {"weak_pawns", Topic::kWeakPawns},
      {"holes", Topic::kHoles},
      {"passed_pawns", Topic::kPassedPawns},
      {"activity", Topic::kActivity},
      {"minor_pieces", Topic::kMinorPieces},
      {"rooks", Topic::kRooks},
      {"dangers", Topic::kDangers},
      {"king_safety", Topic::kKingSafety},
      {"king_activity", Topic::kKingActivity},
      {"space", Topic::kSpace},
      {"centre", Topic::kCentre},
      {"development", Topic::kDevelopment},
      {"ending", Topic::kEnding}};
  const auto found = kNames.find(name);
  EXPECT_NE(found, kNames.end()) << name;
  return found != kNames.end() && found->second == topic;
}

TEST(MainFeature, IsTheFirstReason) {
  const std::vector<FeatureRow> rows = ReadRows();
  ASSERT_GE(rows.size(), 60U);
  std::size_t right = 0;
  std::string missed;
  for (const FeatureRow& row : rows) {
    const Explanation explanation =
        Assayer().Explain(testing_support::FromFen(row.fen), StaticOnly());
    ASSERT_FALSE(explanation.reasons.empty()) << row.name;
    const Reason& first = explanation.reasons.front();
    const Side side = row.side == "white" ? Side::kWhite : Side::kBlack;
    bool fits = false;
    for (const std::string& topic : row.topics) {
      fits = fits || IsOf(first.topic, topic);
    }
    if (fits && first.favours() == side) {
      ++right;
    } else {
      missed += "\n  " + row.name + ": " + first.text;
    }
  }
  EXPECT_GE(right * 100, rows.size() * 85)
      << right << " of " << rows.size() << missed;
  RecordProperty("right", static_cast<int>(right));
}

// Activity follows from something, so it comes right behind what that is; what
// weighs little for a reader comes last, whatever its size.
TEST(Ranking, NamesCausesBeforeWhatFollows) {
  // A French chain: the pieces are more active because of the space.
  const Explanation chain = Assayer().Explain(
      testing_support::FromFen("r1bq1rk1/pp1nbppp/4p3/3pP3/3P4/3B1N2/PP3PPP/"
                               "R1BQ1RK1 w - - 0 12"),
      StaticOnly());
  ASSERT_GE(chain.reasons.size(), 2U);
  EXPECT_EQ(chain.reasons[0].topic, Topic::kSpace) << chain.summary;
  EXPECT_EQ(chain.reasons[1].topic, Topic::kActivity) << chain.summary;
  EXPECT_GT(chain.reasons[1].value_cp, chain.reasons[0].value_cp);
}

}  // namespace
}  // namespace assay
