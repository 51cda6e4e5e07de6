// Writes the library's table of king and pawn against king, for kpk_oracle.mjs
// to compare with a table made from an independent library's moves.
//
// White has the pawn. A line for each side to move (White first), pawn's
// square (a2 to h7) and square of the White king (a1 to h8), in that order; in
// it, a letter for each square of the Black king (a1 to h8):
//   '.' no legal position, 'w' White wins, 'd' drawn, '?' not in the table
#include <iostream>
#include <optional>
#include <string>

#include "assay/facts/kpk.h"
#include "tests/support/king_and_pawn.h"

namespace assay {
namespace {

using testing_support::ForEachKingAndPawn;
using testing_support::KingAndPawn;
using testing_support::PositionOf;

char LetterOf(const KingAndPawn& placement) {
  const std::optional<Position> position = PositionOf(placement);
  if (!position.has_value()) return '.';
  const std::optional<KpkResult> result = LookUpKpk(*position);
  if (!result.has_value() || result->pawn_side != Side::kWhite) return '?';
  return result->won ? 'w' : 'd';
}

void WriteTable(std::ostream& out) {
  std::string line;
  ForEachKingAndPawn([&](const KingAndPawn& placement) {
    line += LetterOf(placement);
    if (line.size() < kSquares) return;
    out << line << '\n';
    line.clear();
  });
}

}  // namespace
}  // namespace assay

int main() {
  std::ios::sync_with_stdio(false);
  assay::WriteTable(std::cout);
  return 0;
}
