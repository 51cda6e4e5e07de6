// Runs a built program and keeps what it said.
#ifndef ASSAY_TESTS_SUPPORT_RUN_PROGRAM_H_
#define ASSAY_TESTS_SUPPORT_RUN_PROGRAM_H_

#include <string>
#include <string_view>
#include <vector>

namespace assay {
namespace testing_support {

struct ProgramInput {
  std::string standard_input;
  std::string output_path;               // instead of keeping the output
  std::vector<std::string> environment;  // "NAME=value", added to ours
};

struct ProgramResult {
  int exit_code = -1;  // 128 + the number of a signal that ended it
  std::string out;
  std::string err;
};

// Waits until the program has ended. Arguments do not include its name.
ProgramResult RunProgram(const std::string& program,
                         const std::vector<std::string>& arguments,
                         const ProgramInput& input = {});

// The same on a terminal of its own; `out` has standard error, too.
ProgramResult RunOnTerminal(const std::string& program,
                            const std::vector<std::string>& arguments,
                            const std::vector<std::string>& environment);

// A new file with these bytes, removed at the end of the test program's life.
std::string TemporaryFile(std::string_view content);

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_RUN_PROGRAM_H_
