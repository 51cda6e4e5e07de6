#include "tests/facts/bishop_and_pawn.h"

#include <optional>

#include "assay/facts/kpk.h"
#include "assay/rules/attacks.h"
#include "tests/support/king_and_pawn.h"

namespace assay {
namespace {

using testing_support::KingAndPawn;
using testing_support::PositionOf;

Bitboard KingMovesFrom(Bitboard set) {
  const Bitboard row = set | Neighbours(set);
  return Neighbours(set) | North(row) | South(row);
}

// The squares where the bare king, to move, has no move to a square that is
// neither guarded nor lost, stalemates left out.
Bitboard LostToMove(Bitboard guarded, Bitboard checked, Bitboard lost) {
  const Bitboard can_move = KingMovesFrom(~guarded);
  return (can_move | checked) & ~KingMovesFrom(~guarded & ~lost);
}

// The squares where the bare king may be with Black to move.
Bitboard PossibleSquares(Square pawn, Square bishop, Square king) {
  return ~(KingAttacks(king) | Bit(king) | Bit(pawn) | Bit(bishop));
}

// Where the bare king stands in check from bishop or pawn. With White to move
// it stands on none of these, so it never blocks the bishop's moves.
Bitboard Checks(Square pawn, Square bishop, Square king) {
  return PawnAttacks(Side::kWhite, pawn) |
         BishopAttacks(bishop, Bit(king) | Bit(pawn));
}

// Whether White wins without the bishop, which the bare king has just taken.
bool WinsWithout(Square pawn, Square bishop, Square king) {
  const std::optional<Position> position =
      PositionOf(KingAndPawn{Side::kWhite, pawn, king, bishop});
  return position.has_value() && LookUpKpk(*position)->won;
}

}  // namespace

BishopAndPawn::BishopAndPawn(LesserPromotion lesser_promotion)
    : lesser_promotion_(lesser_promotion),
      white_moves_(Index(kA8, kA1, kA1)),
      black_moves_(white_moves_) {
  EnsureAttackTables();
  for (int rank = 6; rank >= 1; --rank) Solve(MakeSquare(0, rank));
}

void BishopAndPawn::Solve(Square pawn) {
  Words without(kSquares);  // squares of the taken bishop, by the king's
  for (const Square king : Each(~Bit(pawn))) {
    for (const Square bishop : Each(~Bit(pawn) & ~Bit(king))) {
      if (WinsWithout(pawn, bishop, king)) without[king] |= Bit(bishop);
    }
  }
  for (bool changed = true; changed;) {
    changed = false;
    for (const Square king : Each(~Bit(pawn))) {
      for (const Square bishop : Each(~Bit(pawn) & ~Bit(king))) {
        if (Improve(pawn, bishop, king, without[king])) changed = true;
      }
    }
  }
}

// Works out once more all positions of three of the pieces; returns whether
// any is new.
bool BishopAndPawn::Improve(Square pawn, Square bishop, Square king,
                            Bitboard without) {
  const Bitboard possible = PossibleSquares(pawn, bishop, king);
  const Bitboard checked = Checks(pawn, bishop, king);
  Bitboard& white_moves = white_moves_[Index(pawn, bishop, king)];
  Bitboard& black_moves = black_moves_[Index(pawn, bishop, king)];

  Bitboard wins = PawnMoveWins(pawn, bishop, king);
  for (const Square to : Each(KingAttacks(king) & ~Bit(pawn) & ~Bit(bishop))) {
    wins |= black_moves_[Index(pawn, bishop, to)];
  }
  const Bitboard own = Bit(king) | Bit(pawn);
  for (const Square to : Each(BishopAttacks(bishop, own) & ~own)) {
    wins |= black_moves_[Index(pawn, to, king)];
  }
  wins &= possible & ~checked;
  const Bitboard losses =
      possible & LostToMove(KingAttacks(king) | checked, checked,
                            white_moves | (without & Bit(bishop)));

  const bool changed = wins != white_moves || losses != black_moves;
  white_moves = wins;
  black_moves = losses;
  return changed;
}

Bitboard BishopAndPawn::PawnMoveWins(Square pawn, Square bishop,
                                     Square king) const {
  const Bitboard own = Bit(king) | Bit(bishop);
  const auto stop = static_cast<Square>(pawn + 8);
  if (Contains(own, stop)) return 0;
  if (RankOf(stop) == 7) return PromotionWins(stop, bishop, king);
  Bitboard wins = black_moves_[Index(stop, bishop, king)];
  const auto leap = static_cast<Square>(pawn + 16);
  if (RankOf(pawn) == 1 && !Contains(own, leap)) {
    wins |= black_moves_[Index(leap, bishop, king)] & ~Bit(stop);
  }
  return wins;
}

// Every move but the capture of the new piece loses: with the bishop taken,
// queen or rook win alone.
Bitboard BishopAndPawn::PromotionWins(Square to, Square bishop,
                                      Square king) const {
  Bitboard wins = 0;
  for (const PieceKind kind : {PieceKind::kQueen, PieceKind::kRook}) {
    const Bitboard checked = PieceAttacks(kind, to, Bit(king) | Bit(bishop)) |
                             BishopAttacks(bishop, Bit(king) | Bit(to));
    const bool lesser_wins = lesser_promotion_ == LesserPromotion::kWins;
    wins |= LostToMove(KingAttacks(king) | checked,
                       lesser_wins ? kAllSquares : checked, ~Bit(to));
  }
  return wins & ~Bit(to);
}

}  // namespace assay
