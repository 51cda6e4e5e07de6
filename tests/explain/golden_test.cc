// Whole explanations, kept as text for people to read: a change of any wording
// or value shows as a difference in review. `tests/explain/update_golden`
// writes them anew. The first line of each file is the position explained; the
// positions are our own. Those in golden/proved have search behind them.
#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/explain/text.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/static_only.h"

namespace assay {
namespace {

using testing_support::StaticOnly;

std::vector<std::string> GoldenFiles(const std::string& folder = "") {
  std::vector<std::string> files;
  for (const auto& file :
       std::filesystem::directory_iterator(ASSAY_GOLDEN_DIR + folder)) {
    if (file.path().extension() == ".txt") files.push_back(file.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

// "bishop_pair.txt" becomes "BishopPair".
std::string NameOf(const ::testing::TestParamInfo<std::string>& info) {
  std::string name;
  bool upper = true;
  for (const char c : std::filesystem::path(info.param).stem().string()) {
    if (c != '_') name += upper ? static_cast<char>(std::toupper(c)) : c;
    upper = c == '_';
  }
  return name;
}

class Golden : public ::testing::TestWithParam<std::string> {};
class ProvedGolden : public ::testing::TestWithParam<std::string> {};

void ExpectUnchanged(const std::string& path, const ExplainOptions& options) {
  std::ifstream file(path);
  std::stringstream content;
  content << file.rdbuf();
  const std::string golden = content.str();
  const std::string fen = golden.substr(0, golden.find('\n'));
  TextStyle style;
  style.ledger = options.static_only;
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

INSTANTIATE_TEST_SUITE_P(Positions, Golden, ::testing::ValuesIn(GoldenFiles()),
                         NameOf);
INSTANTIATE_TEST_SUITE_P(Positions, ProvedGolden,
                         ::testing::ValuesIn(GoldenFiles("/proved")), NameOf);

TEST(GoldenFiles, AreThere) {
  EXPECT_GE(GoldenFiles().size(), 10U);
  EXPECT_GE(GoldenFiles("/proved").size(), 6U);
}

}  // namespace
}  // namespace assay
