// Problems go into a status and come out whole, whatever the input was.
#include "assay/base/problem.h"

#include <string>
#include <string_view>
#include <vector>

#include "assay/base/problem_status.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct Quote : testing_support::Row {
  std::string text;
  std::string quoted;
};

const Quote kQuotes[] = {
    {{"Plain"}, "Nf3", "\"Nf3\""},
    {{"Empty"}, "", "\"\""},
    {{"Space"}, "a b", "\"a b\""},
    {{"Nul"}, std::string(1, '\0'), "\"\\x00\""},
    {{"LineEnd"}, "a\nb", "\"a\\x0ab\""},
    {{"UnitSeparator"}, "\x1F", "\"\\x1f\""},
    {{"Delete"}, "\x7F", "\"\\x7f\""},
    {{"HighByte"}, "\xFF", "\"\\xff\""},
    {{"FortyBytes"}, std::string(40, 'x'), '"' + std::string(40, 'x') + '"'},
    {{"FortyOneBytes"},
     std::string(41, 'x'),
     '"' + std::string(40, 'x') + "\"... (41 bytes)"},
    {{"Megabyte"},
     std::string(1 << 20, 'x'),
     '"' + std::string(40, 'x') + "\"... (1048576 bytes)"},
};

class Quotes : public ::testing::TestWithParam<Quote> {};

TEST_P(Quotes, ArePrintableAndShort) {
  EXPECT_EQ(Quoted(GetParam().text), GetParam().quoted);
}

INSTANTIATE_TEST_SUITE_P(Texts, Quotes, ::testing::ValuesIn(kQuotes),
                         testing_support::NameOfRow());

TEST(Problem, SaysWhatItKnows) {
  EXPECT_EQ(ToString(Problem{"side", "unknown", "\"x\"", "w or b"}),
            "side: unknown: found \"x\", expected w or b");
  EXPECT_EQ(ToString(Problem{"side", "unknown", "", ""}), "side: unknown");
  EXPECT_EQ(ToString(Problem{"side", "unknown", "", "w or b"}),
            "side: unknown, expected w or b");
}

TEST(ProblemsStatus, CarriesAllProblems) {
  const std::vector<Problem> problems = {
      {"placement", "no king", "0 white kings", "1 white king"},
      {"", "", "", ""},
      {"move", "not a move", Quoted("\x1F"), ""}};
  const absl::Status status = ProblemsStatus(problems);
  EXPECT_EQ(status.code(), absl::StatusCode::kInvalidArgument);
  EXPECT_EQ(ProblemsOf(status), problems);
  EXPECT_EQ(status.message(),
            "placement: no king: found 0 white kings, expected 1 white king; "
            ": ; move: not a move: found \"\\x1f\"");
}

TEST(ProblemsStatus, IsOkForNone) {
  EXPECT_TRUE(ProblemsStatus({}).ok());
  EXPECT_TRUE(ProblemsOf(absl::OkStatus()).empty());
  EXPECT_TRUE(ProblemsOf(absl::InvalidArgumentError("of others")).empty());
}

TEST(ProblemStatus, CarriesItsOne) {
  const Problem problem{"fen", "empty", "\"\"", "fields"};
  EXPECT_EQ(ProblemsOf(ProblemStatus(problem)), std::vector<Problem>{problem});
}

}  // namespace
}  // namespace assay
