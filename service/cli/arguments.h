// The command line, read into values.
#ifndef ASSAY_SERVICE_CLI_ARGUMENTS_H_
#define ASSAY_SERVICE_CLI_ARGUMENTS_H_

#include <string>
#include <vector>

#include "absl/status/statusor.h"

namespace assay::service {

// How the program ends; the numbers are part of the interface.
enum ExitCode {
  kSuccess = 0,
  kItemsFailed = 1,  // a batch went on past a bad item
  kBadUsage = 2,     // bad usage, or the one input given is bad
  kCannotReadOrWrite = 3,
};

enum class Format { kText, kJson, kWeights };

struct Arguments {
  std::string command;  // "explain", "score", "terms", "help", ...
  std::vector<std::string> operands;  // FENs, files, "-"
  Format format = Format::kText;
  bool help = false;
  bool static_only = false;
  bool all_claims = false;
  bool ledger = false;
  int jobs = 0;              // 0: as many as there are cores
  std::string weights_file;  // empty: the defaults
};

// INVALID_ARGUMENT for an unknown command or option, a missing or bad value,
// or an option that the command does not take.
absl::StatusOr<Arguments> ParseArguments(const std::vector<std::string>& words);

// The text of --help.
std::string UsageText();

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_ARGUMENTS_H_
