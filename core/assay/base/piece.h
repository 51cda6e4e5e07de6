// Kinds of pieces, and a piece as a kind with a side.
#ifndef ASSAY_BASE_PIECE_H_
#define ASSAY_BASE_PIECE_H_

#include <cstdint>

#include "assay/base/side.h"

namespace assay {

// Pawns count as a kind of piece here; texts say "piece or pawn".
enum class PieceKind : std::uint8_t {
  kPawn = 0,
  kKnight = 1,
  kBishop = 2,
  kRook = 3,
  kQueen = 4,
  kKing = 5,
  kNone = 6,
};

inline constexpr int kPieceKinds = 6;
inline constexpr PieceKind kAllKinds[kPieceKinds] = {
    PieceKind::kPawn, PieceKind::kKnight, PieceKind::kBishop,
    PieceKind::kRook, PieceKind::kQueen,  PieceKind::kKing};

constexpr int Index(PieceKind kind) { return static_cast<int>(kind); }

// Exchange values in centipawns: what the definitions of hanging, pinned and
// of a line's material count with (Kaufman 1999; the king has none).
inline constexpr int kExchangeValue[kPieceKinds + 1] = {100, 325, 325, 500,
                                                        975, 0,   0};
constexpr int ExchangeValue(PieceKind kind) {
  return kExchangeValue[Index(kind)];
}

// "pawn", "knight", ...; "" for kNone.
const char* Name(PieceKind kind);

// The SAN letter: 'N', 'B', 'R', 'Q', 'K'; 'P' for a pawn, '?' for kNone.
char Letter(PieceKind kind);

// What stands on a square: a kind and its side, or nothing.
class Piece {
 public:
  constexpr Piece() : code_(static_cast<std::uint8_t>(PieceKind::kNone)) {}
  constexpr Piece(Side side, PieceKind kind)
      : code_(static_cast<std::uint8_t>((Index(side) << 3) | Index(kind))) {}

  constexpr bool empty() const { return kind() == PieceKind::kNone; }
  constexpr PieceKind kind() const {
    return static_cast<PieceKind>(code_ & 7U);
  }
  // Meaningless for an empty square.
  constexpr Side side() const { return static_cast<Side>(code_ >> 3U); }

  friend constexpr bool operator==(Piece a, Piece b) {
    return a.code_ == b.code_;
  }
  friend constexpr bool operator!=(Piece a, Piece b) { return !(a == b); }

 private:
  std::uint8_t code_;
};

// The FEN letter: upper case for White, lower case for Black, '.' for none.
char FenLetter(Piece piece);

// The piece of a FEN letter; an empty Piece for any other character.
Piece PieceFromFenLetter(char letter);

}  // namespace assay

#endif  // ASSAY_BASE_PIECE_H_
