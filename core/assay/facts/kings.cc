#include "assay/facts/kings.h"

namespace assay {
namespace {

bool OnFirstRank(Side side, Square square) {
  return RelativeRank(side, square) == 0;
}

// The empty squares of one diagonal from the king, in order.
SquareList EmptyDiagonal(const Position& position, Square king, int file_step,
                         int rank_step) {
  SquareList squares;
  int file = FileOf(king) + file_step;
  int rank = RankOf(king) + rank_step;
  while (file >= 0 && file < 8 && rank >= 0 && rank < 8 &&
         position.At(MakeSquare(file, rank)).empty()) {
    squares.Add(MakeSquare(file, rank));
    file += file_step;
    rank += rank_step;
  }
  return squares;
}

}  // namespace

Bitboard KingFiles(const Facts& facts, Side side) {
  const Bitboard file = FileMask(FileOf(facts.position().King(side)));
  return file | Neighbours(file);
}

Bitboard ShelterPawns(const Facts& facts, Side side) {
  const Bitboard king = facts.Own(side, PieceKind::kKing);
  const Bitboard one = Forward(side, king | Neighbours(king));
  return facts.Pawns(side).pawns & (one | Forward(side, one));
}

int ShelterGaps(const Facts& facts, Side side) {
  const Bitboard with_pawn = FillFiles(ShelterPawns(facts, side));
  return PopCount(FileBits(KingFiles(facts, side) & ~with_pawn));
}

Bitboard MovedFlankPawns(const Facts& facts, Side side) {
  const Square king = facts.position().King(side);
  if (!OnFirstRank(side, king)) return 0;
  Bitboard files = 0;
  if (FileOf(king) >= 4) files |= FileMask(5) | FileMask(6) | FileMask(7);
  if (FileOf(king) <= 3) files |= FileMask(0) | FileMask(1) | FileMask(2);
  const Bitboard pawns = facts.Pawns(side).pawns;
  const Bitboard at_home = pawns & RelativeRankMask(side, 1);
  return pawns & files & ~FillFiles(at_home);
}

OpenDiagonals FindOpenDiagonals(const Facts& facts, Side side) {
  OpenDiagonals open;
  const Position& position = facts.position();
  const Square king = position.King(side);
  const Side enemy = Other(side);
  const Bitboard colour = ColourOf(king);
  const Bitboard attackers = facts.Own(enemy, PieceKind::kQueen) |
                             (facts.Own(enemy, PieceKind::kBishop) & colour);
  if (attackers == 0) return open;
  const Bitboard empty_near =
      KingAttacks(king) & BishopAttacks(king, 0) & ~position.Occupied();
  if (empty_near == 0) return open;
  for (const int file_step : {-1, 1}) {
    for (const int rank_step : {-1, 1}) {
      SquareList squares = EmptyDiagonal(position, king, file_step, rank_step);
      if (squares.size() < 2) continue;
      open.diagonals[open.size++] = {squares, attackers};
    }
  }
  return open;
}

Bitboard FilesToKing(const Facts& facts, Side side) {
  const Side enemy = Other(side);
  const Bitboard majors =
      facts.Own(enemy, PieceKind::kRook) | facts.Own(enemy, PieceKind::kQueen);
  if (majors == 0) return 0;
  return KingFiles(facts, side) &
         (facts.OpenFiles() | facts.HalfOpenFiles(enemy));
}

Bitboard KingAttackers(const Facts& facts, Side side) {
  const Bitboard near = facts.KingNeighbourhood(side);
  const Bitboard pieces =
      facts.position().Pieces(Other(side)) & ~facts.Pawns(Other(side)).pawns;
  Bitboard attackers = 0;
  for (const Square square : Each(pieces)) {
    if ((facts.Attacks(square) & near) != 0) attackers |= Bit(square);
  }
  return attackers;
}

AttackedZone FindAttackedZone(const Facts& facts, Side side) {
  const Side enemy = Other(side);
  const Square king = facts.position().King(side);
  Bitboard near = KingAttacks(king) | Bit(king);
  near |= North(near) | South(near);
  near |= Neighbours(near);
  return {near & facts.AttackedTwice(enemy),
          near & facts.Attacked(enemy) & ~facts.AttackedTwice(side)};
}

Bitboard CheckSquares(const Facts& facts, Side side) {
  const Side enemy = Other(side);
  const Square king = facts.position().King(enemy);
  const Bitboard occupied = facts.position().Occupied();
  const Bitboard diagonals = BishopAttacks(king, occupied);
  const Bitboard lines = RookAttacks(king, occupied);
  const Bitboard checks =
      (KnightAttacks(king) & facts.AttackedBy(side, PieceKind::kKnight)) |
      (diagonals & facts.AttackedBy(side, PieceKind::kBishop)) |
      (lines & facts.AttackedBy(side, PieceKind::kRook)) |
      ((diagonals | lines) & facts.AttackedBy(side, PieceKind::kQueen));
  const Bitboard by_king_alone =
      facts.Attacks(king) & ~facts.AttackedTwice(enemy);
  const Bitboard safe =
      ~facts.Attacked(enemy) | (by_king_alone & facts.AttackedTwice(side));
  Bitboard squares = checks & safe & ~facts.position().Pieces(side);
  if (facts.Pinned(side) == 0) return squares;
  for (const Square square : Each(squares)) {
    if (CheckersFrom(facts, side, square) == 0) squares &= ~Bit(square);
  }
  return squares;
}

Bitboard CheckersFrom(const Facts& facts, Side side, Square square) {
  const Square king = facts.position().King(Other(side));
  const Bitboard occupied = facts.position().Occupied();
  Bitboard checkers = 0;
  for (const PieceKind kind : {PieceKind::kKnight, PieceKind::kBishop,
                               PieceKind::kRook, PieceKind::kQueen}) {
    if (!Contains(PieceAttacks(kind, square, occupied), king)) continue;
    checkers |= facts.Own(side, kind) & facts.Attackers(side, square);
  }
  return checkers & ~facts.Pinned(side);
}

bool IsKingShut(const Facts& facts, Side side) {
  return (facts.Attacks(facts.position().King(side)) &
          ~facts.position().Pieces(side) & ~facts.Attacked(Other(side))) == 0;
}

int KingMovesToPawns(const Facts& facts, Side side) {
  const Square king = facts.position().King(side);
  int moves = 0;
  for (const Square pawn : Each(facts.position().Pieces(PieceKind::kPawn))) {
    moves += KingDistance(king, pawn);
  }
  return moves;
}

bool IsCastled(const Facts& facts, Side side) {
  const Position& position = facts.position();
  const Square king = position.King(side);
  const int file = FileOf(king);
  if (position.castling().HasAny(side) || RelativeRank(side, king) > 1 ||
      (file > 2 && file < 6)) {
    return false;
  }
  const Square edge = MakeSquare(file < 4 ? 0 : 7, RankOf(king));
  const Bitboard outside = Between(king, edge) | (Bit(edge) & ~Bit(king));
  return (facts.Own(side, PieceKind::kRook) & outside) == 0;
}

bool IsUncastled(const Facts& facts, Side side) {
  const Position& position = facts.position();
  const Square king = position.King(side);
  const int file = FileOf(king);
  if (!OnFirstRank(side, king) || file < 3 || file > 5) return false;
  const bool both_queens = facts.Own(Side::kWhite, PieceKind::kQueen) != 0 &&
                           facts.Own(Side::kBlack, PieceKind::kQueen) != 0;
  return position.castling().HasAny(side) || both_queens;
}

}  // namespace assay
