// Any text as a move, in any position: refused, or a legal move that is written
// and read as the same.
#include "assay/notation/san.h"
#include "tests/fuzz/fuzz.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data,
                                      std::size_t size) {
  using assay::fuzz::Require;
  assay::fuzz::Choices choices(data, size);
  const assay::Position position = assay::fuzz::AnyPosition(choices);
  const std::string_view text = choices.Rest();
  for (const auto& read :
       {assay::ParseSan(position, text), assay::ParseMove(position, text)}) {
    if (!read.ok()) continue;
    Require(assay::IsLegal(position, *read), "a move that is read is legal");
  }
  assay::MoveList moves;
  assay::LegalMoves(position, moves);
  for (const assay::Move move : moves) {
    const auto san = assay::ParseSan(position, assay::ToSan(position, move));
    const auto coordinates =
        assay::ParseMove(position, assay::ToCoordinates(move));
    Require(san.ok() && *san == move, "a move's SAN is read as that move");
    Require(coordinates.ok() && *coordinates == move, "and its coordinates");
  }
  return 0;
}
