// Whole explanations, kept as text for people to read: a change of any wording
// or value shows as a difference in review. `tests/explain/update_golden`
// writes them anew. The first line of each file is the position explained; the
// positions are our own. Those in golden/proved have search behind them.
#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/explain/text.h"
#include "gtest/gtest.h"
#include "tests/support/golden_files.h"
#include "tests/support/printers.h"
#include "tests/support/static_only.h"

namespace assay {
namespace {

using testing_support::ContentOf;
using testing_support::GoldenFiles;
using testing_support::NameOfFile;
using testing_support::StaticOnly;

const std::string kFolder = ASSAY_GOLDEN_DIR;

class Golden : public ::testing::TestWithParam<std::string> {};
class ProvedGolden : public ::testing::TestWithParam<std::string> {};
class GermanGolden : public ::testing::TestWithParam<std::string> {};
class NewcomerGolden : public ::testing::TestWithParam<std::string> {};
class ExpertGolden : public ::testing::TestWithParam<std::string> {};

void ExpectUnchanged(const std::string& path, const ExplainOptions& options) {
  const std::string golden = ContentOf(path);
  const std::string fen = golden.substr(0, golden.find('\n'));
  TextStyle style;
  style.ledger = options.static_only;
  style.language = options.language;
  style.audience = options.audience;
  EXPECT_EQ(
      ToText(Assayer().Explain(testing_support::FromFen(fen), options), style),
      golden)
      << "if this is meant, run tests/explain/update_golden";
}

TEST_P(Golden, ExplanationIsUnchanged) {
  ExpectUnchanged(GetParam(), StaticOnly());
}

TEST_P(ProvedGolden, ExplanationIsUnchanged) {
  ExpectUnchanged(GetParam(), ExplainOptions());
}

TEST_P(GermanGolden, ExplanationIsUnchanged) {
  ExplainOptions options;
  options.language = "de";
  ExpectUnchanged(GetParam(), options);
}

TEST_P(NewcomerGolden, ExplanationIsUnchanged) {
  ExplainOptions options;
  options.audience = Audience::kNewcomer;
  ExpectUnchanged(GetParam(), options);
}

TEST_P(ExpertGolden, ExplanationIsUnchanged) {
  ExplainOptions options;
  options.audience = Audience::kExpert;
  ExpectUnchanged(GetParam(), options);
}

INSTANTIATE_TEST_SUITE_P(Positions, Golden,
                         ::testing::ValuesIn(GoldenFiles(kFolder)), NameOfFile);
INSTANTIATE_TEST_SUITE_P(Positions, ProvedGolden,
                         ::testing::ValuesIn(GoldenFiles(kFolder + "/proved")),
                         NameOfFile);

INSTANTIATE_TEST_SUITE_P(Positions, GermanGolden,
                         ::testing::ValuesIn(GoldenFiles(kFolder + "/de")),
                         NameOfFile);

INSTANTIATE_TEST_SUITE_P(Positions, NewcomerGolden,
                         ::testing::ValuesIn(GoldenFiles(kFolder +
                                                         "/newcomer")),
                         NameOfFile);
INSTANTIATE_TEST_SUITE_P(Positions, ExpertGolden,
                         ::testing::ValuesIn(GoldenFiles(kFolder + "/expert")),
                         NameOfFile);

TEST(GoldenFiles, AreThere) {
  EXPECT_GE(GoldenFiles(kFolder).size(), 10U);
  EXPECT_GE(GoldenFiles(kFolder + "/proved").size(), 6U);
  EXPECT_GE(GoldenFiles(kFolder + "/de").size(), 12U);
  EXPECT_GE(GoldenFiles(kFolder + "/newcomer").size(), 5U);
  EXPECT_GE(GoldenFiles(kFolder + "/expert").size(), 5U);
}

}  // namespace
}  // namespace assay
