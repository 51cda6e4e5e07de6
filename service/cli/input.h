// Where positions come from: an operand, a file, standard input.
#ifndef ASSAY_SERVICE_CLI_INPUT_H_
#define ASSAY_SERVICE_CLI_INPUT_H_

#include <istream>
#include <memory>
#include <string>

#include "absl/status/statusor.h"
#include "service/cli/arguments.h"

namespace assay::service {

// Lines of a batch are cut here; what is longer is a bad item.
inline constexpr std::size_t kMostLineBytes = 8192;

struct Input {
  bool is_batch = false;
  std::string text;                    // the one position of no batch
  std::unique_ptr<std::istream> file;  // null: standard input
};

// What the operands name. Several operands that are no file are one FEN whose
// quotes were forgotten. INVALID_ARGUMENT for no operand; UNAVAILABLE for a
// file that cannot be read.
absl::StatusOr<Input> OpenInput(const Arguments& arguments);

// The next line that is not blank, without its end, at most kMostLineBytes + 1
// bytes of it. False at the end of the input.
bool ReadLine(std::istream& in, std::string& line);

// The whole of a file; UNAVAILABLE where it cannot be read or is larger than
// `most_bytes`.
absl::StatusOr<std::string> ReadFile(const std::string& path,
                                     std::size_t most_bytes);

// Games are read whole: they are looked at more than once.
inline constexpr std::size_t kMostGamesBytes = std::size_t{256} << 20U;

// The text of the one file of games that the operands name, "-" being standard
// input. INVALID_ARGUMENT where they name none; UNAVAILABLE where it cannot be
// read or is larger than kMostGamesBytes.
absl::StatusOr<std::string> ReadGames(const Arguments& arguments);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_INPUT_H_
