#include "service/cli/output_file.h"

#include <filesystem>
#include <system_error>

#include "assay/base/problem.h"

namespace assay::service {

OutputFile::OutputFile(const std::string& path)
    : path_(path),
      temporary_(path + ".tmp"),
      out_(temporary_, std::ios::binary) {}

OutputFile::~OutputFile() {
  if (committed_) return;
  out_.close();
  std::error_code error;
  std::filesystem::remove(temporary_, error);
}

absl::Status OutputFile::Commit() {
  out_.close();
  std::error_code error;
  if (out_.good()) std::filesystem::rename(temporary_, path_, error);
  if (!out_.good() || error) {
    return absl::UnavailableError("output: cannot write: found " +
                                  Quoted(path_) + ", expected a writable file");
  }
  committed_ = true;
  return absl::OkStatus();
}

}  // namespace assay::service
