#include "service/cli/pdf.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <system_error>
#include <vector>

#include "assay/base/problem.h"

namespace assay::service {
namespace {

constexpr const char* kBrowsers[] = {"chromium", "chromium-browser",
                                     "google-chrome", "google-chrome-stable"};

// The exit code, or -1 where the program is not installed.
int Run(const std::string& program, const std::vector<std::string>& arguments) {
  std::vector<char*> words = {const_cast<char*>(program.c_str())};
  for (const std::string& argument : arguments) {
    words.push_back(const_cast<char*>(argument.c_str()));
  }
  words.push_back(nullptr);
  posix_spawn_file_actions_t quiet;
  posix_spawn_file_actions_init(&quiet);
  for (const int stream : {STDOUT_FILENO, STDERR_FILENO}) {
    posix_spawn_file_actions_addopen(&quiet, stream, "/dev/null", O_WRONLY, 0);
  }
  pid_t child = 0;
  const int spawned = posix_spawnp(&child, program.c_str(), &quiet, nullptr,
                                   words.data(), environ);
  posix_spawn_file_actions_destroy(&quiet);
  if (spawned != 0) return -1;
  int status = 0;
  waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : 128;
}

}  // namespace

absl::Status PrintPdf(const std::string& html, const std::string& pdf) {
  std::error_code error;
  const std::string page = std::filesystem::absolute(html, error).string();
  const std::string temporary = pdf + ".tmp";
  std::vector<std::string> arguments = {
      "--headless", "--disable-gpu", "--no-pdf-header-footer",
      "--print-to-pdf=" + temporary, "file://" + page};
  // The browser refuses to run in its sandbox for root.
  if (geteuid() == 0) arguments.insert(arguments.begin(), "--no-sandbox");
  for (const char* browser : kBrowsers) {
    const int code = Run(browser, arguments);
    if (code == -1 || code == 127) continue;
    if (code == 0 && std::filesystem::exists(temporary, error)) {
      std::filesystem::rename(temporary, pdf, error);
      if (!error) return absl::OkStatus();
    }
    return absl::UnavailableError(std::string("pdf: ") + browser +
                                  " failed: found exit code " +
                                  std::to_string(code) + ", expected 0");
  }
  return absl::UnavailableError(
      "pdf: no browser: found none, expected Chromium (Debian: apt install "
      "chromium); the handout can be printed from any browser");
}

}  // namespace assay::service
