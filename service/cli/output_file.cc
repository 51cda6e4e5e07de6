#include "service/cli/output_file.h"

#include <filesystem>
#include <system_error>

#include "assay/base/problem.h"

namespace assay::service {
namespace {

absl::Status CannotWrite(const std::string& path) {
  return absl::UnavailableError("output: cannot write: found " + Quoted(path) +
                                ", expected a writable file");
}

// Where a link leads to; the path itself where nothing is there yet.
std::string Target(const std::string& path) {
  std::error_code error;
  const std::string target = std::filesystem::canonical(path, error).string();
  return error ? path : target;
}

}  // namespace

absl::Status OutputFile::Check(const std::string& path) {
  std::error_code error;
  const std::filesystem::file_status status =
      std::filesystem::status(path, error);
  const bool is_another =
      std::filesystem::exists(status) && !is_regular_file(status);
  return is_another ? CannotWrite(path) : absl::OkStatus();
}

OutputFile::OutputFile(const std::string& path)
    : path_(Target(path)),
      temporary_(path_ + ".tmp"),
      out_(temporary_, std::ios::binary) {}

OutputFile::~OutputFile() {
  if (committed_) return;
  out_.close();
  std::error_code error;
  std::filesystem::remove(temporary_, error);
}

absl::Status OutputFile::Commit() {
  out_.close();
  absl::Status sound = Check(path_);
  if (!sound.ok()) return sound;
  std::error_code error;
  if (out_.good()) std::filesystem::rename(temporary_, path_, error);
  if (!out_.good() || error) return CannotWrite(path_);
  committed_ = true;
  return absl::OkStatus();
}

}  // namespace assay::service
