#include "service/server/unix_socket.h"

#include <fcntl.h>
#include <sys/file.h>

#include "assay/base/problem.h"

namespace assay::service {

absl::Status LockSocket(const std::string& address) {
  const std::string path = address.substr(address.find(':') + 1) + ".lock";
  const int file = open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (file < 0) {
    return absl::UnavailableError("listen: cannot make a lock file: found " +
                                  Quoted(path) +
                                  ", expected a writable folder");
  }
  // Never closed: the lock goes with the program.
  if (flock(file, LOCK_EX | LOCK_NB) != 0) {
    return absl::UnavailableError("listen: another server has it: found " +
                                  Quoted(address) + ", expected a free path");
  }
  return absl::OkStatus();
}

}  // namespace assay::service
