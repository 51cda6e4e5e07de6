#include "assay/rules/draw.h"

#include <algorithm>

#include "assay/rules/movegen.h"

namespace assay {
namespace {

// Plies that make up a number of moves by each side.
constexpr int kFiftyMoves = 100;
constexpr int kSeventyFiveMoves = 150;

}  // namespace

bool IsCheckmate(const Position& position) {
  return position.InCheck() && !HasLegalMove(position);
}

bool IsStalemate(const Position& position) {
  return !position.InCheck() && !HasLegalMove(position);
}

bool IsInsufficientMaterial(const Position& position) {
  const Bitboard strong = position.Pieces(PieceKind::kPawn) |
                          position.Pieces(PieceKind::kRook) |
                          position.Pieces(PieceKind::kQueen);
  if (strong != 0) return false;
  const Bitboard knights = position.Pieces(PieceKind::kKnight);
  const Bitboard bishops = position.Pieces(PieceKind::kBishop);
  if (knights != 0) return bishops == 0 && !HasMany(knights);
  return (bishops & kLightSquares) == 0 || (bishops & kDarkSquares) == 0;
}

bool IsFiftyMoveClaim(const Position& position) {
  return position.halfmove_clock() >= kFiftyMoves && !IsCheckmate(position);
}

bool IsSeventyFiveMoveDraw(const Position& position) {
  return position.halfmove_clock() >= kSeventyFiveMoves &&
         !IsCheckmate(position);
}

void RepetitionCount::Record(const Position& position) {
  if (position.halfmove_clock() == 0) hashes_.clear();
  hashes_.push_back(position.hash());
}

int RepetitionCount::Occurrences() const {
  if (hashes_.empty()) return 0;
  return static_cast<int>(
      std::count(hashes_.begin(), hashes_.end(), hashes_.back()));
}

}  // namespace assay
