// Which squares a piece attacks.
//
// Sliding attacks come from one look-up a piece: the occupied squares on the
// piece's lines are turned into an index by PEXT where the processor is fast
// at it, else by a multiplication with a "magic" number; both give the same
// attacks. The tables are built once, on the first call of EnsureAttackTables,
// which every way to make a Position goes through.
#ifndef ASSAY_RULES_ATTACKS_H_
#define ASSAY_RULES_ATTACKS_H_

#include <cstdint>

#include "assay/base/bitboard.h"
#include "assay/base/piece.h"

namespace assay {

namespace attacks_internal {

struct SliderLookup {
  Bitboard mask = 0;   // squares whose occupation matters
  Bitboard magic = 0;  // multiplier
  const Bitboard* attacks = nullptr;
  unsigned shift = 0;
};

struct Tables {
  SliderLookup rook[kSquares];
  SliderLookup bishop[kSquares];
  Bitboard knight[kSquares];
  Bitboard king[kSquares];
  Bitboard pawn[2][kSquares];
  Bitboard between[kSquares][kSquares];
  Bitboard line[kSquares][kSquares];
  bool use_pext = false;
};

extern Tables tables;

inline Bitboard Look(const SliderLookup& lookup, Bitboard occupied) {
#if defined(__x86_64__)
  if (tables.use_pext) {
    return lookup.attacks[ExtractBits(occupied, lookup.mask)];
  }
#endif
  return lookup
      .attacks[((occupied & lookup.mask) * lookup.magic) >> lookup.shift];
}

// Builds `tables` by either method; for the test that both agree.
void Build(bool use_pext);

}  // namespace attacks_internal

// Builds the tables unless they are; safe from any thread.
void EnsureAttackTables();

inline Bitboard KnightAttacks(Square from) {
  return attacks_internal::tables.knight[from];
}
inline Bitboard KingAttacks(Square from) {
  return attacks_internal::tables.king[from];
}
// The squares that a pawn of the side on `from` attacks.
inline Bitboard PawnAttacks(Side side, Square from) {
  return attacks_internal::tables.pawn[Index(side)][from];
}
inline Bitboard RookAttacks(Square from, Bitboard occupied) {
  return Look(attacks_internal::tables.rook[from], occupied);
}
inline Bitboard BishopAttacks(Square from, Bitboard occupied) {
  return Look(attacks_internal::tables.bishop[from], occupied);
}
inline Bitboard QueenAttacks(Square from, Bitboard occupied) {
  return RookAttacks(from, occupied) | BishopAttacks(from, occupied);
}

// The attacks of a piece of any kind but a pawn.
Bitboard PieceAttacks(PieceKind kind, Square from, Bitboard occupied);

// The attacks of a piece or pawn of its side.
inline Bitboard AttacksOf(Piece piece, Square from, Bitboard occupied) {
  return piece.kind() == PieceKind::kPawn
             ? PawnAttacks(piece.side(), from)
             : PieceAttacks(piece.kind(), from, occupied);
}

// The squares strictly between two squares of one file, rank or diagonal;
// empty for others.
inline Bitboard Between(Square a, Square b) {
  return attacks_internal::tables.between[a][b];
}
// The whole line, edge to edge, through two squares of one file, rank or
// diagonal; empty for others and for a == b.
inline Bitboard Line(Square a, Square b) {
  return attacks_internal::tables.line[a][b];
}

}  // namespace assay

#endif  // ASSAY_RULES_ATTACKS_H_
