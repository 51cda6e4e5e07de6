// What long work has done so far, kept in a file so that a killed run can go
// on, and so that no more than one result is in memory.
//
//   absl::StatusOr<Journal> journal = Journal::Open(path, key, resume);
//   journal->size()              // results that are there already
//   journal->Add(fields);        // one more
//   JournalReader reader(path);  // all of them, in order
//   while (reader.Next(fields)) ...
//
// A result is a list of texts. The key says what the results are of: a journal
// of another key is not gone on with. A result that was cut short by the end
// of the run is dropped.
#ifndef ASSAY_SERVICE_CLI_JOURNAL_H_
#define ASSAY_SERVICE_CLI_JOURNAL_H_

#include <cstddef>
#include <cstdint>
#include <fstream>
#include <string>
#include <string_view>
#include <vector>

#include "absl/status/statusor.h"

namespace assay::service {

using Fields = std::vector<std::string>;

// Sixteen hexadecimal digits that tell these bytes from others.
std::string Digest(std::string_view bytes);

class Journal {
 public:
  // Begins a new one, or goes on with the one at `path` where `resume` is set
  // and the key fits. UNAVAILABLE where the file cannot be written.
  static absl::StatusOr<Journal> Open(const std::string& path,
                                      const std::string& key, bool resume);

  std::size_t size() const { return size_; }
  // False where it cannot be written.
  bool Add(const Fields& fields);
  bool Close();

 private:
  std::ofstream out_;
  std::size_t size_ = 0;
};

class JournalReader {
 public:
  explicit JournalReader(const std::string& path);

  // Whether there is a journal of this key.
  bool Fits(const std::string& key) const { return key_ == key; }
  // False at the end, and at a result that is not whole.
  bool Next(Fields& fields);
  // Bytes of all that was read and whole.
  std::uint64_t whole_bytes() const { return whole_bytes_; }

 private:
  std::ifstream in_;
  std::string key_;
  std::uint64_t whole_bytes_ = 0;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_JOURNAL_H_
