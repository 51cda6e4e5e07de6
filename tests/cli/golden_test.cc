// Whole transcripts of the commands that ask about moves, kept as text for
// people to read. The first line of each file is the command; `update_golden`
// beside this file writes the rest anew. The positions are our own.
#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "gtest/gtest.h"
#include "tests/support/run_program.h"

namespace assay {
namespace {

std::vector<std::string> GoldenFiles() {
  std::vector<std::string> files;
  for (const auto& file :
       std::filesystem::directory_iterator(ASSAY_CLI_GOLDEN_DIR)) {
    if (file.path().extension() == ".txt") files.push_back(file.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

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
  return words;
}

std::string NameOf(const ::testing::TestParamInfo<std::string>& info) {
  std::string name;
  bool upper = true;
  for (const char c : std::filesystem::path(info.param).stem().string()) {
    if (c != '_') name += upper ? static_cast<char>(std::toupper(c)) : c;
    upper = c == '_';
  }
  return name;
}

class Transcript : public ::testing::TestWithParam<std::string> {};

TEST_P(Transcript, IsUnchanged) {
  std::ifstream file(GetParam());
  std::stringstream content;
  content << file.rdbuf();
  const std::string golden = content.str();
  const std::string command = golden.substr(0, golden.find('\n'));
  const auto result =
      testing_support::RunProgram(ASSAY_PROGRAM, WordsOf(command));
  EXPECT_EQ(command + '\n' + result.out + result.err, golden)
      << "if this is meant, run tests/cli/update_golden";
}

INSTANTIATE_TEST_SUITE_P(Commands, Transcript,
                         ::testing::ValuesIn(GoldenFiles()), NameOf);

TEST(Transcripts, AreThere) { EXPECT_GE(GoldenFiles().size(), 12U); }

}  // namespace
}  // namespace assay
