#include "bench/service/child.h"

#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>

namespace assay::bench {
namespace {

[[noreturn]] void Become(const std::string& program,
                         const std::vector<std::string>& arguments) {
  std::vector<char*> words = {const_cast<char*>(program.c_str())};
  for (const std::string& word : arguments) {
    words.push_back(const_cast<char*>(word.c_str()));
  }
  words.push_back(nullptr);
  execv(program.c_str(), words.data());
  std::perror(program.c_str());
  _exit(126);
}

// The value of "address" in a JSON line of ours; empty where there is none.
std::string AddressIn(const std::string& line) {
  const std::string name = "\"address\":\"";
  const std::size_t at = line.find(name);
  if (at == std::string::npos) return "";
  const std::size_t start = at + name.size();
  return line.substr(start, line.find('"', start) - start);
}

}  // namespace

Child::Child(const std::string& program,
             const std::vector<std::string>& arguments) {
  int ends[2];
  if (pipe(ends) != 0) std::abort();
  pid_ = fork();
  if (pid_ == 0) {
    dup2(ends[1], STDERR_FILENO);
    close(ends[0]);
    Become(program, arguments);
  }
  close(ends[1]);
  std::string line;
  for (char c = 0; address_.empty() && read(ends[0], &c, 1) == 1;) {
    if (c != '\n') {
      line += c;
      continue;
    }
    address_ = AddressIn(line);
    line.clear();
  }
  // The pipe stays open: what else is logged is dropped when it is full.
  if (address_.empty()) {
    std::cerr << program << " does not serve\n";
    std::exit(1);
  }
}

Child::~Child() {
  kill(pid_, SIGKILL);
  waitpid(pid_, nullptr, 0);
}

long Child::ResidentKib() const {
  std::ifstream status("/proc/" + std::to_string(pid_) + "/status");
  for (std::string word; status >> word;) {
    long kib = 0;
    if (word == "VmRSS:" && status >> kib) return kib;
  }
  return 0;
}

}  // namespace assay::bench
