#include "tests/support/from_pieces.h"

#include <cstdlib>
#include <iostream>
#include <sstream>
#include <string>

#include "assay/rules/position_check.h"
#include "tests/support/printers.h"

namespace assay {
namespace testing_support {
namespace {

constexpr std::string_view kBlackToMove = ", Black to move";

[[noreturn]] void Refuse(std::string_view text, std::string_view why) {
  std::cerr << "bad pieces in a test: " << text << ": " << why << '\n';
  std::abort();
}

}  // namespace

Position FromPieces(std::string_view text) {
  if (text.find('/') != std::string_view::npos) return FromFen(text);
  ParsedPosition parsed;
  std::string_view pieces = text;
  if (pieces.size() > kBlackToMove.size() &&
      pieces.substr(pieces.size() - kBlackToMove.size()) == kBlackToMove) {
    pieces.remove_suffix(kBlackToMove.size());
    parsed.side_to_move = Side::kBlack;
  }
  Side side = Side::kWhite;
  std::istringstream words{std::string(pieces)};
  for (std::string word; words >> word;) {
    if (word == "v") {
      side = Side::kBlack;
      continue;
    }
    const bool is_pawn = word.size() == 2;
    const Square square = ParseSquare(is_pawn ? word : word.substr(1));
    const PieceKind kind =
        is_pawn ? PieceKind::kPawn : PieceFromFenLetter(word[0]).kind();
    if (square == kNoSquare || kind == PieceKind::kNone ||
        !parsed.board[square].empty()) {
      Refuse(text, word);
    }
    parsed.board[square] = Piece(side, kind);
  }
  const absl::StatusOr<Position> position = CheckedPosition(parsed);
  if (!position.ok()) Refuse(text, position.status().ToString());
  return *position;
}

}  // namespace testing_support
}  // namespace assay
