// The command line, read into values.
#ifndef ASSAY_SERVICE_CLI_ARGUMENTS_H_
#define ASSAY_SERVICE_CLI_ARGUMENTS_H_

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "assay/explain/audience.h"
#include "assay/lesson/handout_style.h"
#include "assay/lesson/key_positions.h"

namespace assay::service {

// How the program ends; the numbers are part of the interface.
enum ExitCode {
  kSuccess = 0,
  kItemsFailed = 1,  // a batch went on past a bad item
  kBadUsage = 2,     // bad usage, or the one input given is bad
  kCannotReadOrWrite = 3,
};

enum class Format { kText, kJson, kEpd, kWeights };

// Which positions of a game's main line are meant.
struct PlySelection {
  std::optional<int> ply;  // this one alone: 0 is the start
  int every = 1;           // else each so many plies
  bool last = false;       // else the last one alone
};

struct Arguments {
  std::string command;  // "explain", "score", "terms", "help", ...
  std::vector<std::string> operands;  // FENs, files, "-"
  Format format = Format::kText;
  bool help = false;
  bool static_only = false;
  std::uint64_t proof_nodes = 0;
  bool all_claims = false;
  bool ledger = false;
  std::string language;  // of the texts; empty: English
  Audience audience = Audience::kClub;
  bool wording = false;           // with what the texts say, for who translates
  std::vector<std::string> with;  // further positions to compare
  bool pgn = false;               // the file holds games
  PlySelection plies;
  LessonSelection selection;  // of a lesson's positions
  std::string title;          // of a handout
  std::string items_file;     // a lesson's outputs; empty: not wanted
  std::string annotated_file;
  std::string handout_file;
  std::string pdf_file;
  Paper paper = Paper::kAny;  // that sheets are printed on
  std::string name;           // of a student
  bool resume = false;
  bool every_hit = false;    // of find
  int jobs = 0;              // 0: as many as there are cores
  std::string weights_file;  // empty: the defaults
  std::string server;        // empty: everything is done here
  std::string server_ca;     // files of PEM: TLS, and mutual TLS
  std::string server_cert;
  std::string server_key;
  std::string server_token;  // file
};

// INVALID_ARGUMENT for an unknown command or option, a missing or bad value,
// or an option that the command does not take.
absl::StatusOr<Arguments> ParseArguments(const std::vector<std::string>& words);

// The text of --help.
std::string UsageText();

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_ARGUMENTS_H_
