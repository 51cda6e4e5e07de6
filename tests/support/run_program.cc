// Standard streams are files: no pipe can fill up, whatever is said.
#include "tests/support/run_program.h"

#include <fcntl.h>
#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

namespace assay {
namespace testing_support {
namespace {

class TemporaryDirectory {
 public:
  TemporaryDirectory() {
    std::string name =
        std::filesystem::temp_directory_path() / "assay-test-XXXXXX";
    if (mkdtemp(name.data()) == nullptr) std::abort();
    path_ = name;
  }
  ~TemporaryDirectory() { std::filesystem::remove_all(path_); }
  TemporaryDirectory(const TemporaryDirectory&) = delete;
  TemporaryDirectory& operator=(const TemporaryDirectory&) = delete;

  std::string NewPath() { return path_ / std::to_string(files_++); }

 private:
  std::filesystem::path path_;
  int files_ = 0;
};

TemporaryDirectory& Directory() {
  static TemporaryDirectory directory;
  return directory;
}

std::string ContentOf(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream content;
  content << file.rdbuf();
  return content.str();
}

// In the child: becomes the program.
[[noreturn]] void Become(const std::string& program,
                         const std::vector<std::string>& arguments,
                         const std::vector<std::string>& environment) {
  for (const std::string& setting : environment) {
    const std::size_t equals = setting.find('=');
    setenv(setting.substr(0, equals).c_str(),
           setting.substr(equals + 1).c_str(), 1);
  }
  std::vector<char*> words = {const_cast<char*>(program.c_str())};
  for (const std::string& word : arguments) {
    words.push_back(const_cast<char*>(word.c_str()));
  }
  words.push_back(nullptr);
  execv(program.c_str(), words.data());
  std::perror(program.c_str());
  _exit(126);
}

void Redirect(int stream, const std::string& path, int flags) {
  const int file = open(path.c_str(), flags, 0600);
  if (file < 0 || dup2(file, stream) < 0) _exit(125);
  close(file);
}

int ExitCodeOf(pid_t child) {
  int status = 0;
  if (waitpid(child, &status, 0) != child) return -1;
  return WIFSIGNALED(status) ? 128 + WTERMSIG(status) : WEXITSTATUS(status);
}

}  // namespace

ProgramResult RunProgram(const std::string& program,
                         const std::vector<std::string>& arguments,
                         const ProgramInput& input) {
  const std::string in = TemporaryFile(input.standard_input);
  const bool keep = input.output_path.empty();
  const std::string out = keep ? Directory().NewPath() : input.output_path;
  const std::string err = Directory().NewPath();
  const pid_t child = fork();
  if (child == 0) {
    Redirect(STDIN_FILENO, in, O_RDONLY);
    Redirect(STDOUT_FILENO, out, O_WRONLY | O_CREAT);
    Redirect(STDERR_FILENO, err, O_WRONLY | O_CREAT);
    Become(program, arguments, input.environment);
  }
  ProgramResult result;
  result.exit_code = ExitCodeOf(child);
  if (keep) result.out = ContentOf(out);
  result.err = ContentOf(err);
  return result;
}

ProgramResult RunOnTerminal(const std::string& program,
                            const std::vector<std::string>& arguments,
                            const std::vector<std::string>& environment) {
  int terminal = -1;
  const pid_t child = forkpty(&terminal, nullptr, nullptr, nullptr);
  if (child == 0) Become(program, arguments, environment);
  ProgramResult result;
  char buffer[4096];
  // The end of the program shows as an error of reading.
  for (ssize_t n; (n = read(terminal, buffer, sizeof(buffer))) > 0;) {
    result.out.append(buffer, static_cast<std::size_t>(n));
  }
  close(terminal);
  result.exit_code = ExitCodeOf(child);
  return result;
}

std::string TemporaryFile(std::string_view content) {
  std::string path = Directory().NewPath();
  std::ofstream file(path, std::ios::binary);
  file << content;
  if (!file.flush()) {
    std::cerr << "cannot write " << path << '\n';
    std::abort();
  }
  return path;
}

}  // namespace testing_support
}  // namespace assay
