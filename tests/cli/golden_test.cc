// Whole transcripts of the commands that ask about moves, kept as text for
// people to read. The first line of each file is the command; `update_golden`
// beside this file writes the rest anew. The positions are our own.
#include <string>
#include <vector>

#include "gtest/gtest.h"
#include "tests/support/golden_files.h"
#include "tests/support/run_program.h"

namespace assay {
namespace {

using testing_support::ContentOf;
using testing_support::GoldenFiles;
using testing_support::NameOfFile;

const std::string kFolder = ASSAY_CLI_GOLDEN_DIR;

// The words after "$ assay"; double quotes hold words together.
std::vector<std::string> WordsOf(const std::string& command) {
  std::vector<std::string> words;
  std::string word;
  bool quoted = false;
  for (const char c : command + ' ') {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ' ' && !quoted) {
      if (!word.empty()) words.push_back(word);
      word.clear();
    } else {
      word += c;
    }
  }
  words.erase(words.begin(), words.begin() + 2);
  // Files are named from the project's root.
  for (std::string& each : words) {
    if (each.rfind("examples/", 0) == 0 || each.rfind("tests/", 0) == 0) {
      each.insert(0, ASSAY_SOURCE_DIR "/");
    }
  }
  return words;
}

class Transcript : public ::testing::TestWithParam<std::string> {};

TEST_P(Transcript, IsUnchanged) {
  const std::string golden = ContentOf(GetParam());
  const std::string command = golden.substr(0, golden.find('\n'));
  const auto result =
      testing_support::RunProgram(ASSAY_PROGRAM, WordsOf(command));
  EXPECT_EQ(command + '\n' + result.out + result.err, golden)
      << "if this is meant, run tests/cli/update_golden";
}

INSTANTIATE_TEST_SUITE_P(Commands, Transcript,
                         ::testing::ValuesIn(GoldenFiles(kFolder)), NameOfFile);

TEST(Transcripts, AreThere) { EXPECT_GE(GoldenFiles(kFolder).size(), 36U); }

}  // namespace
}  // namespace assay
