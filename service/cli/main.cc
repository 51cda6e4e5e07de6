// The command line front door.
#include <unistd.h>

#include <iostream>
#include <new>
#include <string>
#include <vector>

#include "service/cli/commands.h"

namespace {

// On any thread: nothing can be said or written any more that needs memory, and
// what was written so far are whole items.
[[noreturn]] void EndWithoutMemory() {
  constexpr char kMessage[] = "assay: out of memory\n";
  const ssize_t ignored = write(STDERR_FILENO, kMessage, sizeof kMessage - 1);
  static_cast<void>(ignored);
  _exit(assay::service::kCannotReadOrWrite);
}

}  // namespace

int main(int argc, char** argv) {
  std::set_new_handler(EndWithoutMemory);
  std::ios::sync_with_stdio(false);
  const std::vector<std::string> words(argv + 1, argv + argc);
  return assay::service::Run(words, std::cout);
}
