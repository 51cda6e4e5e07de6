// Any line as an EPD record: refused, or written and read again as the same.
#include "assay/notation/epd.h"
#include "tests/fuzz/fuzz.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data,
                                      std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const absl::StatusOr<assay::EpdRecord> read = assay::ParseEpd(text);
  if (!read.ok()) return 0;
  // Some records that are read cannot be written; that is said.
  const absl::StatusOr<std::string> written = assay::WriteEpd(*read);
  if (!written.ok()) return 0;
  const absl::StatusOr<assay::EpdRecord> again = assay::ParseEpd(*written);
  assay::fuzz::Require(again.ok(), "what is written is read");
  const absl::StatusOr<std::string> twice = assay::WriteEpd(*again);
  assay::fuzz::Require(twice.ok() && *twice == *written, "as the same record");
  return 0;
}
