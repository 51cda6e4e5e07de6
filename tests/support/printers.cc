#include "tests/support/printers.h"

#include <cstdlib>
#include <iostream>
#include <ostream>

#include "assay/notation/fen.h"
#include "assay/notation/san.h"

namespace assay {

void PrintTo(Square square, std::ostream* out) { *out << ToString(square); }

void PrintTo(Side side, std::ostream* out) { *out << Name(side); }

void PrintTo(Move move, std::ostream* out) { *out << ToCoordinates(move); }

void PrintTo(const Position& position, std::ostream* out) {
  *out << ToFen(position) << '\n';
  for (int rank = 7; rank >= 0; --rank) {
    for (int file = 0; file < 8; ++file) {
      *out << FenLetter(position.At(MakeSquare(file, rank))) << ' ';
    }
    *out << '\n';
  }
}

void PrintTo(const Problem& problem, std::ostream* out) {
  *out << ToString(problem);
}

namespace testing_support {

Position FromFen(std::string_view fen) {
  const absl::StatusOr<Position> position = PositionFromFen(fen);
  if (!position.ok()) {
    std::cerr << "bad FEN in a test: " << fen << ": "
              << position.status().message() << '\n';
    std::abort();
  }
  return *position;
}

Move MoveOf(const Position& position, std::string_view text) {
  const absl::StatusOr<Move> move = ParseMove(position, text);
  if (!move.ok()) {
    std::cerr << "bad move in a test: " << text << ": "
              << move.status().message() << '\n';
    std::abort();
  }
  return *move;
}

}  // namespace testing_support
}  // namespace assay
