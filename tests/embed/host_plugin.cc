// A shared library of a host's: it exports what is the host's alone.
#include "assay/assay.h"

extern "C" __attribute__((visibility("default"))) int host_score(
    const char* fen) {
  const absl::StatusOr<assay::Position> position = assay::PositionFromFen(fen);
  return position.ok() ? assay::Assayer().Score(*position) : 0;
}
