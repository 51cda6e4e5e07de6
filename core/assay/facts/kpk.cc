// Retrograde iteration with the rules of chess alone, pawn by pawn from the
// seventh rank down to the second. Nothing is won at first; then, until
// nothing changes, a position is won where the pawn's side has a move to a won
// one, or the bare king is mated or has only moves to won ones. One word holds
// a bit for each square of the bare king, so that all 64 are worked out at
// once.
//
// One fact from outside the iteration is used: a new queen or rook wins unless
// the bare king takes it at once or is stalemated. The oracle, which plays
// those endings out, confirms it. A new bishop or knight never wins.
#include "assay/facts/kpk.h"

#include <mutex>

#include "assay/base/bitboard.h"
#include "assay/rules/attacks.h"

namespace assay {
namespace {

// The pawn's side plays as White; wings are symmetrical, so that a pawn on the
// files a to d is enough.
constexpr int kPawnFiles = 4;
constexpr int kPawnSquares = kPawnFiles * 6;

// Squares of the bare king where the pawn's side wins, by the pawn's square
// (PawnIndex) and its king's. Squares where the bare king cannot be are never
// among them.
struct Table {
  Bitboard pawn_side_moves[kPawnSquares][kSquares];
  Bitboard bare_king_moves[kPawnSquares][kSquares];
};

Table table;
std::once_flag table_built;

int PawnIndex(Square pawn) {
  return (RankOf(pawn) - 1) * kPawnFiles + FileOf(pawn);
}

Square Ahead(Square square, int ranks) {
  return MakeSquare(FileOf(square), RankOf(square) + ranks);
}

// All squares that are a king's move from one of the set.
Bitboard KingMovesFrom(Bitboard set) {
  const Bitboard row = set | Neighbours(set);
  return Neighbours(set) | North(row) | South(row);
}

// The squares where the bare king, to move, is lost: those without a move to a
// square that is neither guarded nor lost, stalemates left out.
Bitboard LostToMove(Bitboard guarded, Bitboard checked, Bitboard lost) {
  const Bitboard can_move = KingMovesFrom(~guarded);
  const Bitboard escapes = KingMovesFrom(~guarded & ~lost);
  return (can_move | checked) & ~escapes;
}

// The squares of the bare king where promotion on `to` wins.
Bitboard PromotionWins(Square king, Square to) {
  Bitboard wins = 0;
  for (const PieceKind kind : {PieceKind::kQueen, PieceKind::kRook}) {
    const Bitboard attacks = PieceAttacks(kind, to, Bit(king));
    // Every move but the capture of the new piece loses.
    wins |= LostToMove(KingAttacks(king) | attacks, attacks, ~Bit(to));
  }
  return wins & ~Bit(to);
}

// The squares of the bare king where a move of the pawn wins.
Bitboard PawnMoveWins(Square king, Square pawn) {
  const Square stop = Ahead(pawn, 1);
  if (stop == king) return 0;
  if (RankOf(stop) == 7) return PromotionWins(king, stop);
  Bitboard wins = table.bare_king_moves[PawnIndex(stop)][king];
  if (RankOf(pawn) == 1 && Ahead(pawn, 2) != king) {
    const int leap = PawnIndex(Ahead(pawn, 2));
    wins |= table.bare_king_moves[leap][king] & ~Bit(stop);
  }
  return wins;
}

// Works out once more all positions of one pawn and one king of its side;
// returns whether any is new.
bool Improve(Square king, Square pawn) {
  const int index = PawnIndex(pawn);
  Bitboard& pawn_side_moves = table.pawn_side_moves[index][king];
  Bitboard& bare_king_moves = table.bare_king_moves[index][king];
  const Bitboard possible = ~(KingAttacks(king) | Bit(king) | Bit(pawn));
  const Bitboard checked = PawnAttacks(Side::kWhite, pawn);

  Bitboard wins = PawnMoveWins(king, pawn);
  for (const Square to : Each(KingAttacks(king) & ~Bit(pawn))) {
    wins |= table.bare_king_moves[index][to];
  }
  wins &= possible & ~checked;
  const Bitboard losses = possible & LostToMove(KingAttacks(king) | checked,
                                                checked, pawn_side_moves);

  const bool changed = wins != pawn_side_moves || losses != bare_king_moves;
  pawn_side_moves = wins;
  bare_king_moves = losses;
  return changed;
}

void Build() {
  EnsureAttackTables();
  for (int rank = 6; rank >= 1; --rank) {
    for (int file = 0; file < kPawnFiles; ++file) {
      const Square pawn = MakeSquare(file, rank);
      for (bool changed = true; changed;) {
        changed = false;
        for (const Square king : Each(~Bit(pawn))) {
          if (Improve(king, pawn)) changed = true;
        }
      }
    }
  }
}

}  // namespace

std::optional<KpkResult> LookUpKpk(const Position& position) {
  const Bitboard pawns = position.Pieces(PieceKind::kPawn);
  const Bitboard kings = position.Pieces(PieceKind::kKing);
  if (pawns == 0 || HasMany(pawns) || position.Occupied() != (pawns | kings)) {
    return std::nullopt;
  }
  std::call_once(table_built, Build);

  const Side side = position.At(First(pawns)).side();
  Square pawn = Relative(side, First(pawns));
  Square king = Relative(side, position.King(side));
  Square bare_king = Relative(side, position.King(Other(side)));
  if (FileOf(pawn) >= kPawnFiles) {
    pawn = FlipFile(pawn);
    king = FlipFile(king);
    bare_king = FlipFile(bare_king);
  }
  const auto& wins = position.side_to_move() == side ? table.pawn_side_moves
                                                     : table.bare_king_moves;
  return KpkResult{side, Contains(wins[PawnIndex(pawn)][king], bare_king)};
}

}  // namespace assay
