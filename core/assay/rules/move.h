// A move, in two bytes.
#ifndef ASSAY_RULES_MOVE_H_
#define ASSAY_RULES_MOVE_H_

#include <cstddef>
#include <cstdint>

#include "assay/base/piece.h"
#include "assay/base/square.h"

namespace assay {

// From, to, and what is special about it. A Move says nothing of the position
// it belongs to; only the moves that LegalMoves() yields are known to be
// legal. Castling is the king's move of two squares.
class Move {
 public:
  enum class Type : std::uint8_t {
    kNormal = 0,
    kEnPassant = 1,
    kCastling = 2,
    kPromotion = 4,  // and 5 to 7: knight, bishop, rook, queen
  };

  // The null move: a1 to a1. Also what a pass is written as in lines.
  constexpr Move() = default;
  constexpr Move(Square from, Square to, Type type = Type::kNormal)
      : code_(static_cast<std::uint16_t>(
            from | (to << 6) | (static_cast<unsigned>(type) << 12))) {}
  static constexpr Move Promotion(Square from, Square to, PieceKind kind) {
    Move move(from, to);
    move.code_ = static_cast<std::uint16_t>(
        move.code_ | ((4U + static_cast<unsigned>(Index(kind)) - 1U) << 12U));
    return move;
  }

  constexpr Square from() const { return static_cast<Square>(code_ & 63U); }
  constexpr Square to() const {
    return static_cast<Square>((code_ >> 6U) & 63U);
  }
  constexpr Type type() const {
    return is_promotion() ? Type::kPromotion
                          : static_cast<Type>((code_ >> 12U) & 3U);
  }
  constexpr bool is_promotion() const { return (code_ >> 14U) != 0; }
  // The piece promoted to; kNone where the move is no promotion.
  constexpr PieceKind promotion() const {
    return is_promotion() ? static_cast<PieceKind>(((code_ >> 12U) & 3U) + 1U)
                          : PieceKind::kNone;
  }
  constexpr bool is_null() const { return code_ == 0; }
  constexpr std::uint16_t code() const { return code_; }

  friend constexpr bool operator==(Move a, Move b) {
    return a.code_ == b.code_;
  }
  friend constexpr bool operator!=(Move a, Move b) { return !(a == b); }

 private:
  std::uint16_t code_ = 0;
};

// Moves in the order in which they were found, on the stack. No legal
// position has more than 218 moves; a set-up one with many queens may have
// more, but never over 16 pieces with 27 moves each.
class MoveList {
 public:
  static constexpr std::size_t kCapacity = 512;

  // Makes none of the moves: each is made when it is added.
  MoveList() {}

  void Add(Move move) { moves_[size_++] = move; }
  std::size_t size() const { return size_; }
  bool empty() const { return size_ == 0; }
  Move operator[](std::size_t i) const { return moves_[i]; }
  const Move* begin() const { return moves_; }
  const Move* end() const { return moves_ + size_; }

 private:
  std::size_t size_ = 0;
  // Clearing a kilobyte would cost as much as finding the moves.
  union {
    Move moves_[kCapacity];
  };
};

}  // namespace assay

#endif  // ASSAY_RULES_MOVE_H_
