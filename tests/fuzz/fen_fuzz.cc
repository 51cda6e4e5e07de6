// Any text as a FEN: refused with its faults, or read, written and read again
// as the same.
#include "assay/base/problem_status.h"
#include "assay/notation/fen.h"
#include "tests/fuzz/fuzz.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data,
                                      std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const absl::StatusOr<assay::Position> read = assay::PositionFromFen(text);
  if (!read.ok()) {
    assay::fuzz::Require(!assay::ProblemsOf(read.status()).empty(),
                         "a refusal says why");
    return 0;
  }
  const std::string written = assay::ToFen(*read);
  const absl::StatusOr<assay::Position> again = assay::PositionFromFen(written);
  assay::fuzz::Require(again.ok() && assay::ToFen(*again) == written,
                       "what is written is read");
  assay::fuzz::Require(read->hash() == again->hash(), "as the same position");
  return 0;
}
