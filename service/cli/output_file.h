// A file that appears under its name when it is whole, and not before.
#ifndef ASSAY_SERVICE_CLI_OUTPUT_FILE_H_
#define ASSAY_SERVICE_CLI_OUTPUT_FILE_H_

#include <fstream>
#include <ostream>
#include <string>

#include "absl/status/status.h"

namespace assay::service {

class OutputFile {
 public:
  // UNAVAILABLE where the path is something else than a file, e.g. a device:
  // to rename onto it would replace it.
  static absl::Status Check(const std::string& path);

  // Written beside `path` until Commit().
  explicit OutputFile(const std::string& path);
  // Without Commit() nothing is left.
  ~OutputFile();
  OutputFile(const OutputFile&) = delete;
  OutputFile& operator=(const OutputFile&) = delete;

  std::ostream& out() { return out_; }
  // Renames; UNAVAILABLE where anything could not be written.
  absl::Status Commit();

 private:
  const std::string path_;
  const std::string temporary_;
  std::ofstream out_;
  bool committed_ = false;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_OUTPUT_FILE_H_
