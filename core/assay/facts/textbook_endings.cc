// Every function first asks for its material, so that others cost nothing.
#include "assay/facts/textbook_endings.h"

#include <cstdlib>

#include "assay/facts/endings.h"

namespace assay {
namespace {

// Ranks of pawns, from their side's view.
constexpr int kFourth = 3;
constexpr int kFifth = 4;
constexpr int kSixth = 5;
constexpr int kSeventh = 6;

// Kings, a piece of one kind each, and one pawn of the side's.
bool HasOneEachAndPawn(const Facts& facts, PieceKind kind, Side side) {
  const Position& position = facts.position();
  if (PopCount(position.Occupied()) != 5) return false;
  const Bitboard own = facts.Own(side, kind);
  const Bitboard enemy = facts.Own(Other(side), kind);
  const Bitboard pawn = facts.Pawns(side).pawns;
  const Bitboard kings = position.Pieces(PieceKind::kKing);
  return own != 0 && enemy != 0 && pawn != 0 && !HasMany(own) &&
         !HasMany(enemy) && !HasMany(pawn) &&
         position.Occupied() == (kings | own | enemy | pawn);
}

bool IsRookPawn(Square pawn) { return FileOf(pawn) == 0 || FileOf(pawn) == 7; }

Square PromotionSquare(Side side, Square pawn) {
  return Relative(side, MakeSquare(FileOf(pawn), 7));
}

int FilesApart(Square a, Square b) { return std::abs(FileOf(a) - FileOf(b)); }

// Whether a piece of either side can be taken, or the side is in check: then
// tactics decide.
bool IsQuietFor(const Facts& facts, Side side, Bitboard pieces) {
  const Position& position = facts.position();
  const Bitboard own = pieces & position.Pieces(side);
  return (own & facts.Attacked(Other(side))) == 0 &&
         (pieces & ~own & facts.Attacked(side)) == 0 &&
         !Contains(facts.Attacked(Other(side)), position.King(side));
}

// The pieces of Philidor's defence: the side's king and rook, the enemy's king
// and pawn.
struct Defence {
  Square king;
  Square rook;
  Square enemy_king;
  Square pawn;
  bool has_move;
};

// While the pawn has not reached its sixth rank, the rook keeps the king from
// it.
bool KeepsSixthRank(const Defence& defence, Side attacker) {
  const int pawn_rank = RelativeRank(attacker, defence.pawn);
  if (pawn_rank != kFourth && pawn_rank != kFifth) return false;
  if (RelativeRank(attacker, defence.rook) != kSixth) return false;
  if (RelativeRank(attacker, defence.enemy_king) >= kSixth) return false;
  const int king_rank = RelativeRank(attacker, defence.king);
  if (king_rank < kSeventh) return false;
  if (defence.has_move) return FilesApart(defence.king, defence.pawn) <= 1;
  if (FileOf(defence.king) != FileOf(defence.pawn)) return false;
  return king_rank > kSeventh || FileOf(defence.rook) != FileOf(defence.pawn);
}

// Once the pawn is there, its king has no shelter from checks from behind.
bool ChecksFromBehind(const Defence& defence, Side attacker) {
  if (RelativeRank(attacker, defence.pawn) != kSixth) return false;
  if (RelativeRank(attacker, defence.rook) > 2) return false;
  if (FileOf(defence.king) != FileOf(defence.pawn)) return false;
  const int king_rank = RelativeRank(attacker, defence.king);
  if (king_rank < kSeventh) return false;
  const bool beside = RelativeRank(attacker, defence.enemy_king) == kSixth &&
                      FilesApart(defence.enemy_king, defence.pawn) == 1;
  return defence.has_move || king_rank == kSeventh || !beside;
}

}  // namespace

Bitboard KeySquares(Side side, Square pawn) {
  if (IsRookPawn(pawn)) return 0;
  const Bitboard row = Bit(pawn) | Neighbours(Bit(pawn));
  const Bitboard next = Forward(side, row);
  const int rank = RelativeRank(side, pawn);
  if (rank <= kFourth) return Forward(side, next);
  if (rank <= kSixth) return next | Forward(side, next);
  return (row & ~Bit(pawn)) | next;
}

bool IsOnKeySquare(const Facts& facts, Side side) {
  const Position& position = facts.position();
  const Bitboard pawn = facts.Pawns(side).pawns;
  const Bitboard kings = position.Pieces(PieceKind::kKing);
  return pawn != 0 && !HasMany(pawn) && position.Occupied() == (pawn | kings) &&
         Contains(KeySquares(side, First(pawn)), position.King(side));
}

bool IsLucena(const Facts& facts, Side side) {
  if (!HasOneEachAndPawn(facts, PieceKind::kRook, side)) return false;
  const Position& position = facts.position();
  const Square pawn = First(facts.Pawns(side).pawns);
  if (RelativeRank(side, pawn) != kSeventh || IsRookPawn(pawn) ||
      position.King(side) != PromotionSquare(side, pawn)) {
    return false;
  }
  // The enemy king is cut off on the side of the pawn with more files.
  const Square rook = First(facts.Own(side, PieceKind::kRook));
  const int to_right = FileOf(pawn) < 4 ? 1 : -1;
  const int king_files =
      (FileOf(position.King(Other(side))) - FileOf(pawn)) * to_right;
  const int rook_files = (FileOf(rook) - FileOf(pawn)) * to_right;
  if (king_files != 2 && king_files != 3) return false;
  if (rook_files <= 0 || rook_files >= king_files) return false;
  const Bitboard attacked = facts.Attacked(Other(side));
  const bool pawn_safe =
      position.side_to_move() == side || !Contains(attacked, pawn);
  return pawn_safe && !Contains(attacked, rook);
}

bool IsPhilidor(const Facts& facts, Side side) {
  const Side attacker = Other(side);
  if (!HasOneEachAndPawn(facts, PieceKind::kRook, attacker)) return false;
  const Position& position = facts.position();
  const Defence defence{
      position.King(side), First(facts.Own(side, PieceKind::kRook)),
      position.King(attacker), First(facts.Pawns(attacker).pawns),
      position.side_to_move() == side};
  if (IsRookPawn(defence.pawn)) return false;
  return (KeepsSixthRank(defence, attacker) ||
          ChecksFromBehind(defence, attacker)) &&
         IsQuietFor(facts, side, position.Pieces(PieceKind::kRook));
}

bool IsVancura(const Facts& facts, Side side) {
  const Side attacker = Other(side);
  if (!HasOneEachAndPawn(facts, PieceKind::kRook, attacker)) return false;
  const Position& position = facts.position();
  const Square pawn = First(facts.Pawns(attacker).pawns);
  const Square rook = First(facts.Own(side, PieceKind::kRook));
  const Square king = position.King(side);
  const int rank = RelativeRank(attacker, pawn);
  if (!IsRookPawn(pawn) || rank < kFourth || rank > kSixth) return false;
  if (First(facts.Own(attacker, PieceKind::kRook)) !=
      PromotionSquare(attacker, pawn)) {
    return false;
  }
  return RankOf(rook) == RankOf(pawn) && FilesApart(rook, pawn) >= 4 &&
         Contains(facts.Attacks(rook), pawn) &&
         RelativeRank(attacker, king) == kSeventh &&
         FilesApart(king, pawn) >= 6 &&
         RelativeRank(attacker, position.King(attacker)) <= rank - 3 &&
         IsQuietFor(facts, side, position.Pieces(PieceKind::kRook));
}

bool OftenHoldsQueen(const Facts& facts, Side side) {
  const Position& position = facts.position();
  const Side attacker = Other(side);
  const Bitboard pawns = facts.Pawns(side).pawns;
  const Bitboard queens = facts.Own(attacker, PieceKind::kQueen);
  if (pawns == 0 || queens == 0 || HasMany(pawns) || HasMany(queens) ||
      position.Occupied() !=
          (position.Pieces(PieceKind::kKing) | pawns | queens)) {
    return false;
  }
  const Square pawn = First(pawns);
  const Square king = position.King(side);
  const int file = FileOf(pawn);
  return RelativeRank(side, pawn) == kSeventh &&
         (file == 0 || file == 2 || file == 5 || file == 7) &&
         RelativeRank(side, king) >= kSeventh && FilesApart(king, pawn) <= 2 &&
         KingDistance(position.King(attacker), PromotionSquare(side, pawn)) >=
             (IsRookPawn(pawn) ? 5 : 4);
}

bool HoldsQueen(const Facts& facts, Side side) {
  if (!OftenHoldsQueen(facts, side)) return false;
  const Position& position = facts.position();
  const Side attacker = Other(side);
  const Square pawn = First(facts.Pawns(side).pawns);
  const Square queen = First(facts.Own(attacker, PieceKind::kQueen));
  const Square king = position.King(side);
  const Square enemy_king = position.King(attacker);
  const Square promotion = PromotionSquare(side, pawn);
  if (FilesApart(king, pawn) != 1 || KingDistance(enemy_king, promotion) < 5) {
    return false;
  }
  const Bitboard lines = Between(queen, king) | Between(queen, promotion);
  if (Contains(lines, enemy_king)) return false;
  return position.side_to_move() == side
             ? !Contains(facts.Attacked(side), queen)
             : !Contains(facts.Pinned(side), pawn);
}

bool BlocksPawnOfOppositeBishop(const Facts& facts, Side side) {
  const Side attacker = Other(side);
  if (!HasOneEachAndPawn(facts, PieceKind::kBishop, attacker)) return false;
  const Square bishop = First(facts.Own(side, PieceKind::kBishop));
  const Square enemy = First(facts.Own(attacker, PieceKind::kBishop));
  const Square king = facts.position().King(side);
  const Bitboard pawn = facts.Pawns(attacker).pawns;
  return IsLight(bishop) != IsLight(enemy) && IsLight(king) != IsLight(enemy) &&
         Contains(FrontSpan(attacker, pawn), king) &&
         RelativeRank(attacker, First(pawn)) >= kFourth &&
         !Contains(facts.Attacked(attacker), bishop);
}

bool CannotWin(const Facts& facts, Side side) {
  const Side defender = Other(side);
  return IsPhilidor(facts, defender) || IsVancura(facts, defender) ||
         HoldsQueen(facts, defender) ||
         BlocksPawnOfOppositeBishop(facts, defender);
}

}  // namespace assay
