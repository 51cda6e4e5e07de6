// The lock beside a Unix socket: gRPC would let a second server take over the
// path of one that still runs.
#ifndef ASSAY_SERVICE_SERVER_UNIX_SOCKET_H_
#define ASSAY_SERVICE_SERVER_UNIX_SOCKET_H_

#include <string>

#include "absl/status/statusor.h"

namespace assay::service {

// Held until the end of the program. A file PATH.lock is made and stays.
// UNAVAILABLE where another server has it or the file cannot be made.
absl::Status LockSocket(const std::string& address);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_UNIX_SOCKET_H_
