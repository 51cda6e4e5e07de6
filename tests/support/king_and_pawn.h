// Every placement of king and pawn against king, White having the pawn.
#ifndef ASSAY_TESTS_SUPPORT_KING_AND_PAWN_H_
#define ASSAY_TESTS_SUPPORT_KING_AND_PAWN_H_

#include <optional>
#include <utility>

#include "assay/base/side.h"
#include "assay/base/square.h"
#include "assay/rules/position.h"

namespace assay {
namespace testing_support {

struct KingAndPawn {
  Side to_move = Side::kWhite;
  Square pawn = kNoSquare;
  Square king = kNoSquare;
  Square bare_king = kNoSquare;
};

// Calls visit(placement) for each, legal or not, by side to move, pawn, king
// and bare king, each from a1 on.
template <class Visit>
void ForEachKingAndPawn(Visit visit) {
  for (const Side to_move : kSides) {
    for (int pawn = kA2; pawn <= kH7; ++pawn) {
      for (int king = 0; king < kSquares; ++king) {
        for (int bare_king = 0; bare_king < kSquares; ++bare_king) {
          visit(KingAndPawn{to_move, static_cast<Square>(pawn),
                            static_cast<Square>(king),
                            static_cast<Square>(bare_king)});
        }
      }
    }
  }
}

// The position, where the rules allow it.
inline std::optional<Position> PositionOf(const KingAndPawn& placement) {
  const auto [to_move, pawn, king, bare_king] = placement;
  if (pawn == king || pawn == bare_king || king == bare_king) {
    return std::nullopt;
  }
  ParsedPosition parsed;
  parsed.board[pawn] = Piece(Side::kWhite, PieceKind::kPawn);
  parsed.board[king] = Piece(Side::kWhite, PieceKind::kKing);
  parsed.board[bare_king] = Piece(Side::kBlack, PieceKind::kKing);
  parsed.side_to_move = to_move;
  std::optional<Position> position = Position::FromParsed(parsed);
  if (!position.has_value()) return std::nullopt;
  return *std::move(position);
}

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_KING_AND_PAWN_H_
