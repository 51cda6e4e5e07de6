// How runs end that cannot succeed: 2 for bad usage or a single bad input, 3
// where reading or writing fails; a message on standard error, nothing on
// standard output.
#include <string>
#include <vector>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/rows.h"
#include "tests/support/run_program.h"

namespace assay {
namespace {

using ::testing::HasSubstr;
using testing_support::ProgramInput;
using testing_support::ProgramResult;
using testing_support::RunProgram;
using testing_support::TemporaryFile;

constexpr char kFen[] = "4k3/pp6/8/8/8/8/PP6/4K2R w K - 0 1";

struct Failure : testing_support::Row {
  std::vector<std::string> arguments;
  int exit_code;
  const char* message;  // a part of it
};

const Failure kFailures[] = {
    {{"NoCommand"}, {}, 2, "command: missing"},
    {{"UnknownCommand"}, {"evaluate", kFen}, 2, "command: unknown"},
    {{"OptionBeforeTheCommand"},
     {"--jobs", "2", "score", kFen},
     2,
     "command: unknown"},
    {{"NoOperand"}, {"explain"}, 2, "operand: missing"},
    {{"UnknownOption"}, {"explain", "--deep", kFen}, 2, "option: unknown"},
    {{"OptionOfAnotherCommand"},
     {"score", "--ledger", kFen},
     2,
     "not an option of score"},
    {{"MissingValue"}, {"explain", kFen, "--format"}, 2, "missing value"},
    {{"ValueOfAFlag"}, {"explain", "--static=1", kFen}, 2, "takes no value"},
    {{"UnknownFormat"}, {"explain", "--format", "xml", kFen}, 2, "--format"},
    {{"FormatOfAnotherCommand"},
     {"explain", "--format=weights", kFen},
     2,
     "--format"},
    {{"EmptyFormat"}, {"explain", "--format=", kFen}, 2, "--format"},
    {{"UnknownLanguage"},
     {"explain", "--language", "fr", kFen},
     2,
     "--language: no texts in it"},
    {{"UnknownAudience"},
     {"explain", "--audience", "grandmaster", kFen},
     2,
     "--audience: unknown audience"},
    {{"LanguageOfAnotherCommand"},
     {"score", "--language", "de", kFen},
     2,
     "not an option of score"},
    {{"NoJobs"}, {"score", "--jobs", "0", kFen}, 2, "--jobs"},
    {{"TooManyJobs"}, {"score", "--jobs", "257", kFen}, 2, "--jobs"},
    {{"NegativeJobs"}, {"score", "--jobs=-1", kFen}, 2, "--jobs"},
    {{"JobsInWords"}, {"score", "--jobs", "two", kFen}, 2, "--jobs"},
    {{"JobsBeyondAnyInteger"},
     {"score", "--jobs", "99999999999999999999", kFen},
     2,
     "--jobs"},
    {{"BadFen"}, {"explain", "nonsense"}, 2, "fen: wrong number of fields"},
    {{"EmptyFen"}, {"explain", ""}, 2, "fen: empty"},
    {{"EveryFaultOfAFen"},
     {"score", "4k3/8/8/8/8/8/8/4K2 x y -"},
     2,
     "castling: unknown character"},
    {{"BadFenAsJson"},
     {"explain", "--format", "json", "nonsense"},
     2,
     "fen: wrong number of fields"},
    {{"FileThatIsNotThere"}, {"explain", "/nowhere/positions.txt"}, 2, "fen: "},
    {{"TwoDashes"}, {"score", "-", "-"}, 2, "fen: "},
    {{"Directory"}, {"explain", "/"}, 3, "file: cannot read"},
    {{"DirectoryToScore"}, {"score", "/"}, 3, "file: cannot read"},
    {{"WeightsThatAreNotThere"},
     {"score", "--weights", "/nowhere", kFen},
     3,
     "file: cannot read"},
    {{"WeightsDirectory"}, {"terms", "--weights", "/"}, 3, "file: cannot read"},
    {{"BadWeights"},
     {"score", "--weights", TemporaryFile("rook five\n"), kFen},
     2,
     "weights line 1"},
    {{"EndlessWeights"},
     {"score", "--weights", "/dev/zero", kFen},
     3,
     "file: too large"},
};

class Failures : public ::testing::TestWithParam<Failure> {};

TEST_P(Failures, SayWhyAndHow) {
  const Failure& row = GetParam();
  const ProgramResult result = RunProgram(ASSAY_PROGRAM, row.arguments);
  EXPECT_EQ(result.exit_code, row.exit_code);
  EXPECT_EQ(result.out, "");
  EXPECT_THAT(result.err, ::testing::StartsWith("assay: "));
  EXPECT_THAT(result.err, HasSubstr(row.message));
  EXPECT_EQ(result.err.find('\n'), result.err.size() - 1) << "one line";
}

INSTANTIATE_TEST_SUITE_P(Runs, Failures, ::testing::ValuesIn(kFailures),
                         testing_support::NameOfRow());

struct Unwritable : testing_support::Row {
  std::vector<std::string> arguments;
};

const Unwritable kUnwritables[] = {
    {{"Explain"}, {"explain", kFen}},
    {{"ExplainAsJson"}, {"explain", "--format", "json", kFen}},
    {{"ExplainBatch"}, {"explain", "-"}},
    {{"Score"}, {"score", kFen}},
    {{"ScoreBatch"}, {"score", "-"}},
    {{"Terms"}, {"terms"}},
    {{"Help"}, {"help"}},
    {{"Version"}, {"version"}},
};

class Unwritables : public ::testing::TestWithParam<Unwritable> {};

// /dev/full takes no byte.
TEST_P(Unwritables, EndWithThree) {
  ProgramInput input;
  input.standard_input = std::string(kFen) + "\nnonsense\n";
  input.output_path = "/dev/full";
  const ProgramResult result =
      RunProgram(ASSAY_PROGRAM, GetParam().arguments, input);
  EXPECT_EQ(result.exit_code, 3);
  EXPECT_THAT(result.err, HasSubstr("assay: output: cannot write"));
}

INSTANTIATE_TEST_SUITE_P(Commands, Unwritables,
                         ::testing::ValuesIn(kUnwritables),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
