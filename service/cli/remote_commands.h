// The commands through a server: the same input, the same output.
#ifndef ASSAY_SERVICE_CLI_REMOTE_COMMANDS_H_
#define ASSAY_SERVICE_CLI_REMOTE_COMMANDS_H_

#include <cstddef>
#include <ostream>

#include "absl/status/status.h"
#include "assay/v1/common.pb.h"
#include "service/cli/arguments.h"

namespace assay::service {

// What a server is asked for.
v1::ExplainOptions RemoteOptions(const Arguments& arguments);

// A lesson that no server takes: a sentence for the user.
absl::Status TooLargeForServers(std::size_t bytes);

// Positions are read here, evaluated by the server of the arguments, a share of
// a batch in one call, and printed here. kCannotReadOrWrite where the server
// cannot be reached or fails.
int RunRemotely(const Arguments& arguments, std::ostream& out);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_REMOTE_COMMANDS_H_
