// Any bytes as a PGN file: the reader and the skimmer come to its end, and a
// game that is read without fault is written and read again as the same.
#include "assay/notation/pgn_reader.h"
#include "assay/notation/pgn_skimmer.h"
#include "assay/notation/pgn_writer.h"
#include "tests/fuzz/fuzz.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data,
                                      std::size_t size) {
  using assay::fuzz::Require;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  assay::PgnSkimmer skimmer{text};
  assay::SkimmedGame skimmed;
  while (skimmer.Next(skimmed)) {
  }
  assay::PgnReader reader{text};
  while (const std::optional<assay::PgnItem> item = reader.Next()) {
    if (!item->ok()) continue;
    const auto written = assay::WritePgn(item->tree, assay::PgnLayout::kExport);
    if (!written.ok()) continue;
    assay::PgnReader second{std::string_view(*written)};
    const std::optional<assay::PgnItem> again = second.Next();
    Require(again.has_value() && again->ok(), "what is written is read");
    const auto twice = assay::WritePgn(again->tree, assay::PgnLayout::kExport);
    Require(twice.ok() && *twice == *written, "as the same game");
  }
  return 0;
}
