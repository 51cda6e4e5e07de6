// The commands through a server: the same input, the same output.
#ifndef ASSAY_SERVICE_CLI_REMOTE_COMMANDS_H_
#define ASSAY_SERVICE_CLI_REMOTE_COMMANDS_H_

#include <ostream>

#include "assay/v1/common.pb.h"
#include "service/cli/arguments.h"

namespace assay::service {

// What a server is asked for.
v1::ExplainOptions RemoteOptions(const Arguments& arguments);

// Positions are read here, evaluated by the server of the arguments, a share of
// a batch in one call, and printed here. kCannotReadOrWrite where the server
// cannot be reached or fails.
int RunRemotely(const Arguments& arguments, std::ostream& out);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_REMOTE_COMMANDS_H_
