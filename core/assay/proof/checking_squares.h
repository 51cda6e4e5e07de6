// Where the pieces of the side to move would give check.
#ifndef ASSAY_PROOF_CHECKING_SQUARES_H_
#define ASSAY_PROOF_CHECKING_SQUARES_H_

#include <array>

#include "assay/rules/attacks.h"
#include "assay/rules/move.h"
#include "assay/rules/position.h"

namespace assay {

// A quick sieve: a move that MayCheck() refuses gives no check; one that it
// lets through nearly always does.
class CheckingSquares {
 public:
  explicit CheckingSquares(const Position& position) {
    const Side enemy = Other(position.side_to_move());
    const Square king = position.King(enemy);
    const Bitboard occupied = position.Occupied();
    const Bitboard bishop = BishopAttacks(king, occupied);
    const Bitboard rook = RookAttacks(king, occupied);
    squares_ = {PawnAttacks(enemy, king), KnightAttacks(king), bishop, rook,
                bishop | rook};
    // A piece that shields the king from one of its own side, or nearly.
    const Bitboard own = position.Pieces(position.side_to_move());
    const Bitboard queens = position.Pieces(PieceKind::kQueen);
    const Bitboard sliders = (RookAttacks(king, occupied & ~(rook & own)) &
                              (position.Pieces(PieceKind::kRook) | queens)) |
                             (BishopAttacks(king, occupied & ~(bishop & own)) &
                              (position.Pieces(PieceKind::kBishop) | queens));
    if ((sliders & own) != 0) shields_ = (rook | bishop) & own;
  }

  bool MayCheck(const Position& position, Move move) const {
    return move.type() != Move::Type::kNormal ||
           Contains(shields_, move.from()) ||
           Contains(squares_[Index(position.At(move.from()).kind())],
                    move.to());
  }

 private:
  std::array<Bitboard, kPieceKinds> squares_{};  // none for the king
  Bitboard shields_ = 0;
};

}  // namespace assay

#endif  // ASSAY_PROOF_CHECKING_SQUARES_H_
