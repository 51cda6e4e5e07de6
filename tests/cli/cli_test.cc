// The command line as its users meet it: what is printed, and how runs end.
// Bad usage and bad surroundings are in cli_errors_test.cc.
#include <sstream>
#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/explain/text.h"
#include "assay/notation/fen.h"
#include "assay/terms/term.h"
#include "assay/terms/weights_text.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/plausible_play.h"
#include "tests/support/rows.h"
#include "tests/support/run_program.h"

namespace assay {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;
using testing_support::FromFen;
using testing_support::ProgramInput;
using testing_support::ProgramResult;
using testing_support::RunOnTerminal;
using testing_support::RunProgram;
using testing_support::TemporaryFile;

constexpr char kInitial[] =
    "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1";
constexpr char kRookUp[] = "4k3/pp6/8/8/8/8/PP6/4K2R w K - 0 1";

ProgramResult RunAssay(const std::vector<std::string>& arguments,
                       const std::string& standard_input = "") {
  ProgramInput input;
  input.standard_input = standard_input;
  return RunProgram(ASSAY_PROGRAM, arguments, input);
}

std::string ScoreLine(const char* fen) {
  return std::to_string(Assayer().Score(FromFen(fen))) + "\n";
}

std::string ExplainText(const char* fen, const TextStyle& style = {}) {
  return ToText(Assayer().Explain(FromFen(fen)), style) + "\n";
}

TEST(Explain, PrintsOneFen) {
  const ProgramResult result = RunAssay({"explain", kRookUp});
  EXPECT_EQ(result.exit_code, 0);
  EXPECT_EQ(result.out, ExplainText(kRookUp));
  EXPECT_EQ(result.err, "");
}

TEST(Explain, TakesAFenWithoutQuotes) {
  const ProgramResult result = RunAssay(
      {"explain", "4k3/pp6/8/8/8/8/PP6/4K2R", "w", "K", "-", "0", "1"});
  EXPECT_EQ(result.exit_code, 0);
  EXPECT_EQ(result.out, ExplainText(kRookUp));
}

TEST(Explain, TakesFourFieldsAndADoubleDash) {
  const ProgramResult result =
      RunAssay({"explain", "--", "4k3/pp6/8/8/8/8/PP6/4K2R w K -"});
  EXPECT_EQ(result.exit_code, 0);
  EXPECT_EQ(result.out, ExplainText(kRookUp));
}

TEST(Explain, ShowsTheLedgerOnRequest) {
  TextStyle style;
  style.ledger = true;
  const ProgramResult result = RunAssay({"explain", "--ledger", kRookUp});
  EXPECT_EQ(result.out, ExplainText(kRookUp, style));
}

TEST(Explain, ReadsAFileLineByLine) {
  const std::string path =
      TemporaryFile(std::string(kRookUp) + "\n" + kInitial + "\n");
  const ProgramResult result = RunAssay({"explain", path});
  EXPECT_EQ(result.exit_code, 0);
  EXPECT_EQ(result.out, ExplainText(kRookUp) + ExplainText(kInitial));
  EXPECT_EQ(result.err, "");
}

TEST(Explain, TreatsAFileOfOneLineAsABatch) {
  const ProgramResult result = RunAssay({"explain", TemporaryFile("nonsense")});
  EXPECT_EQ(result.exit_code, 1);
  EXPECT_THAT(result.out, ::testing::StartsWith("error: "));
  EXPECT_EQ(result.err, "");
}

TEST(Explain, PutsErrorsInTheirPlace) {
  const ProgramResult result =
      RunAssay({"explain", "-"},
               std::string(kRookUp) + "\nnonsense\n" + kInitial + "\n");
  EXPECT_EQ(result.exit_code, 1);
  const std::string error =
      "error: " + std::string(PositionFromFen("nonsense").status().message()) +
      "\n\n";
  EXPECT_EQ(result.out, ExplainText(kRookUp) + error + ExplainText(kInitial));
  EXPECT_EQ(result.err, "");
}

TEST(Score, PrintsOneIntegerALine) {
  const ProgramResult result = RunAssay(
      {"score", "-"}, std::string(kInitial) + "\nnonsense\n" + kRookUp + "\n");
  EXPECT_EQ(result.exit_code, 1);
  EXPECT_EQ(result.out, ScoreLine(kInitial) + "error\n" + ScoreLine(kRookUp));
}

TEST(Score, IsWhitesWhoeverIsToMove) {
  const ProgramResult white = RunAssay({"score", kRookUp});
  const ProgramResult black =
      RunAssay({"score", "4k3/pp6/8/8/8/8/PP6/4K2R b K - 0 1"});
  EXPECT_GT(std::stoi(white.out), 300);
  EXPECT_GT(std::stoi(black.out), 300);
}

// What a batch may hold between its positions.
struct Batch : testing_support::Row {
  std::string text;
  std::string scores;
  int exit_code;
};

const std::string kZero = ScoreLine(kInitial);
const std::string kRook = ScoreLine(kRookUp);
constexpr std::size_t kMegabyte = 1 << 20;

const Batch kBatches[] = {
    {{"Empty"}, "", "", 0},
    {{"BlankLines"}, "\n\n  \n\t\n", "", 0},
    {{"WindowsLineEnds"},
     std::string(kInitial) + "\r\n" + kRookUp + "\r\n\r\n",
     kZero + kRook,
     0},
    {{"NoLineEndAtTheEnd"},
     std::string(kInitial) + "\n" + kRookUp,
     kZero + kRook,
     0},
    {{"BlanksAround"}, "  " + std::string(kRookUp) + "  \n", kRook, 0},
    {{"LineOfAMegabyte"},
     std::string(kInitial) + "\n" + std::string(kMegabyte, 'k') + "\n" +
         kRookUp + "\n",
     kZero + "error\n" + kRook,
     1},
    {{"MegabyteAfterAFen"},
     std::string(kInitial) + std::string(kMegabyte, ' ') + "\n" + kRookUp,
     "error\n" + kRook,
     1},
    {{"NulBytes"},
     std::string("\0\n", 2) + kInitial + std::string("\0\n", 2) + kRookUp,
     "error\nerror\n" + kRook,
     1},
    {{"BytesThatAreNoText"},
     "\xff\xfe\x80\n" + std::string(kRookUp),
     "error\n" + kRook,
     1},
    {{"TwoKings"},
     "4k3/8/8/8/8/8/8/8 w - -\n" + std::string(kRookUp),
     "error\n" + kRook,
     1},
};

class Batches : public ::testing::TestWithParam<Batch> {};

TEST_P(Batches, GoOnPastBadItems) {
  const ProgramResult result = RunAssay({"score", "-"}, GetParam().text);
  EXPECT_EQ(result.out, GetParam().scores);
  EXPECT_EQ(result.exit_code, GetParam().exit_code);
  EXPECT_EQ(result.err, "");
  const ProgramResult of_file =
      RunAssay({"score", TemporaryFile(GetParam().text)});
  EXPECT_EQ(of_file.out, GetParam().scores);
  EXPECT_EQ(of_file.exit_code, GetParam().exit_code);
}

INSTANTIATE_TEST_SUITE_P(Inputs, Batches, ::testing::ValuesIn(kBatches),
                         testing_support::NameOfRow());

// 3,000 positions with some faults among them.
const std::string& LongBatch() {
  static const std::string& batch = *[] {
    auto* text = new std::string;
    int line = 0;
    testing_support::PlayPlausibly(51, 3000, [&](const Position& position) {
      *text += ToFen(position) + "\n";
      if (++line % 500 == 0) *text += "fault " + std::to_string(line) + "\n";
    });
    return text;
  }();
  return batch;
}

class Jobs : public ::testing::TestWithParam<std::vector<std::string>> {};

TEST_P(Jobs, DoNotChangeTheOutput) {
  const auto run = [](const char* jobs) {
    std::vector<std::string> arguments = GetParam();
    arguments.insert(arguments.end(), {"--jobs", jobs, "-"});
    return RunAssay(arguments, LongBatch());
  };
  const ProgramResult alone = run("1");
  EXPECT_EQ(alone.exit_code, 1);
  EXPECT_GT(alone.out.size(), 3000U);
  for (const char* jobs : {"2", "7", "16"}) {
    const ProgramResult result = run(jobs);
    EXPECT_EQ(result.exit_code, 1);
    EXPECT_TRUE(result.out == alone.out) << jobs << " jobs";
  }
}

using Words = std::vector<std::string>;
INSTANTIATE_TEST_SUITE_P(
    Commands, Jobs,
    ::testing::Values(Words{"explain", "--static"},
                      Words{"explain", "--static", "--format", "json"},
                      Words{"explain", "--proof-nodes", "200"},
                      Words{"score"}));

TEST(Colour, IsForTerminalsOnlyAndMayBeRefused) {
  const std::vector<std::string> arguments = {"explain", kRookUp};
  EXPECT_THAT(RunOnTerminal(ASSAY_PROGRAM, arguments, {"NO_COLOR="}).out,
              HasSubstr("\x1b[1m"));
  EXPECT_THAT(RunOnTerminal(ASSAY_PROGRAM, arguments, {"NO_COLOR=1"}).out,
              Not(HasSubstr("\x1b")));
  EXPECT_THAT(RunAssay(arguments).out, Not(HasSubstr("\x1b")));
}

TEST(Progress, IsShownOnATerminalOnly) {
  const std::string path = TemporaryFile(LongBatch());
  EXPECT_THAT(RunOnTerminal(ASSAY_PROGRAM, {"score", path}, {}).out,
              HasSubstr("done"));
  EXPECT_EQ(RunAssay({"score", path}).err, "");
}

TEST(Help, IsPrintedWhereverItIsAskedFor) {
  for (const std::vector<std::string>& arguments :
       std::vector<std::vector<std::string>>{{"--help"},
                                             {"-h"},
                                             {"help"},
                                             {"explain", "--help"},
                                             {"score", "-", "--help"},
                                             {"terms", "--help"}}) {
    const ProgramResult result = RunAssay(arguments);
    EXPECT_EQ(result.exit_code, 0);
    EXPECT_EQ(result.err, "");
    for (const char* word : {"explain", "score", "terms", "--format", "--jobs",
                             "--weights", "--ledger", "NO_COLOR", "Exit"}) {
      EXPECT_THAT(result.out, HasSubstr(word));
    }
    std::istringstream lines(result.out);
    for (std::string line; std::getline(lines, line);) {
      EXPECT_LE(line.size(), 80U) << line;
    }
  }
}

TEST(Version, TellsTheLibraryItsCatalogueAndWeights) {
  const std::string terms = RunAssay({"terms"}).out;
  const std::string catalogue = terms.substr(0, terms.find('\n'));
  EXPECT_THAT(catalogue, StartsWith("catalogue "));
  for (const char* word : {"version", "--version"}) {
    EXPECT_EQ(RunAssay({word}).out,
              std::string("assay ") + kVersion + " (" + catalogue + ")\n");
  }
}

TEST(Terms, AreAllListed) {
  const ProgramResult result = RunAssay({"terms"});
  EXPECT_EQ(result.exit_code, 0);
  for (int i = 0; i < kTerms; ++i) {
    const TermInfo& info = Info(static_cast<TermId>(i));
    EXPECT_THAT(result.out, HasSubstr("\n" + std::string(info.name) + " ("));
    EXPECT_THAT(result.out, HasSubstr(std::string(info.definition)));
  }
}

TEST(WeightsFile, GoesRoundAndChangesScores) {
  const ProgramResult defaults = RunAssay({"terms", "--format", "weights"});
  EXPECT_EQ(defaults.out, ToText(Weights()));
  const std::string same = TemporaryFile(defaults.out);
  EXPECT_EQ(RunAssay({"score", "--weights", same, kRookUp}).out, kRook);
  const std::string other = TemporaryFile("rook 400 400\n");
  EXPECT_EQ(RunAssay({"score", "--weights=" + other, kRookUp}).out,
            std::to_string(std::stoi(kRook) - 100) + "\n");
}

}  // namespace
}  // namespace assay
