// The explanations of tests/explain/golden once more, as JSON: every byte that
// a program is given. Lines are broken for people to read; the answer itself is
// one line. `tests/explain/update_golden` writes these files, too.
#include <algorithm>
#include <filesystem>
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

const std::string kFolder = ASSAY_GOLDEN_DIR;

// The transcripts of a folder are asked for with options of their own.
std::vector<std::string> OptionsOf(const std::filesystem::path& folder) {
  if (folder == "golden") return {"--static"};
  if (folder == "de") return {"--language", "de"};
  if (folder == "proved") return {};
  return {"--audience", folder};
}

class JsonTranscript : public ::testing::TestWithParam<std::string> {};

TEST_P(JsonTranscript, IsUnchanged) {
  const std::filesystem::path text = GetParam();
  const std::string transcript = ContentOf(text);
  std::vector<std::string> words = OptionsOf(text.parent_path().filename());
  words.insert(words.begin(), {"explain", "--format", "json"});
  words.insert(words.end(),
               {"--", transcript.substr(0, transcript.find('\n'))});
  std::string golden =
      ContentOf(std::filesystem::path(text).replace_extension(".json"));
  golden.erase(std::remove(golden.begin(), golden.end(), '\n'), golden.end());
  const auto result = testing_support::RunProgram(ASSAY_PROGRAM, words);
  EXPECT_EQ(result.err, "");
  EXPECT_EQ(result.out, golden + '\n')
      << "if this is meant, run tests/explain/update_golden";
}

INSTANTIATE_TEST_SUITE_P(Static, JsonTranscript,
                         ::testing::ValuesIn(GoldenFiles(kFolder)), NameOfFile);
INSTANTIATE_TEST_SUITE_P(Proved, JsonTranscript,
                         ::testing::ValuesIn(GoldenFiles(kFolder + "/proved")),
                         NameOfFile);
INSTANTIATE_TEST_SUITE_P(German, JsonTranscript,
                         ::testing::ValuesIn(GoldenFiles(kFolder + "/de")),
                         NameOfFile);
INSTANTIATE_TEST_SUITE_P(Newcomer, JsonTranscript,
                         ::testing::ValuesIn(GoldenFiles(kFolder +
                                                         "/newcomer")),
                         NameOfFile);
INSTANTIATE_TEST_SUITE_P(Expert, JsonTranscript,
                         ::testing::ValuesIn(GoldenFiles(kFolder + "/expert")),
                         NameOfFile);

}  // namespace
}  // namespace assay
