// The term on a position, and the benchmark tools with the term beside those of
// the catalogue:
//   own_term FEN
//   own_term costs [--json FILE]
//   own_term worth [FILE.tsv | FILE.pgn | -] [--json FILE] [--html FILE]
#include <iostream>
#include <string>

#include "assay/assay.h"
#include "bare_fianchetto.h"

namespace {

int Show(const char* fen) {
  const absl::StatusOr<assay::Position> position = assay::PositionFromFen(fen);
  if (!position.ok()) {
    std::cerr << position.status().message() << '\n';
    return 1;
  }
  const assay::Facts facts(*position);
  assay::bench::OwnEntries entries;
  entries.Restart(facts);
  BareFianchetto().find(facts, entries);
  for (const assay::bench::OwnEntry& entry : entries.found()) {
    std::cout << BareFianchetto().title << " of " << Name(entry.side) << ", "
              << assay::ToString(assay::First(entry.squares)) << ": "
              << entry.value_cp << " cp for White\n";
  }
  const int score = assay::Assayer().Score(*position);
  std::cout << "score " << score << " cp, with the term "
            << score + entries.score_cp() << " cp\n";
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  const std::string what = argc > 1 ? argv[1] : "";
  if (what == "costs") {
    return assay::bench::MeasureCosts(argc - 1, argv + 1, {BareFianchetto()});
  }
  if (what == "worth") {
    return assay::bench::MeasureWorth(argc - 1, argv + 1, {BareFianchetto()});
  }
  if (argc == 2) return Show(argv[1]);
  std::cerr << "usage: own_term FEN | costs ... | worth ...\n";
  return 2;
}
