// The command line front door.
#include <iostream>
#include <string>
#include <vector>

#include "service/cli/commands.h"

int main(int argc, char** argv) {
  std::ios::sync_with_stdio(false);
  const std::vector<std::string> words(argv + 1, argv + argc);
  return assay::service::Run(words, std::cout);
}
