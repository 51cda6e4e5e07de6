#include "assay/facts/pieces.h"

namespace assay {

bool HasBishopPair(const Facts& facts, Side side) {
  const Bitboard bishops = facts.Own(side, PieceKind::kBishop);
  return (bishops & kLightSquares) != 0 && (bishops & kDarkSquares) != 0;
}

bool HasOppositeBishops(const Facts& facts) {
  const Bitboard white = facts.Own(Side::kWhite, PieceKind::kBishop);
  const Bitboard black = facts.Own(Side::kBlack, PieceKind::kBishop);
  return PopCount(white) == 1 && PopCount(black) == 1 &&
         IsLight(First(white)) != IsLight(First(black));
}

Bitboard BadBishopPawns(const Facts& facts, Side side, Square bishop) {
  const Bitboard all_pawns =
      facts.Pawns(Side::kWhite).pawns | facts.Pawns(Side::kBlack).pawns;
  const Bitboard stopped = facts.Pawns(side).pawns & Facts::kCentreFiles &
                           ColourOf(bishop) & Forward(Other(side), all_pawns);
  if (!HasMany(stopped)) return 0;
  for (const Square pawn : Each(stopped)) {
    if (RelativeRank(side, bishop) <= RelativeRank(side, pawn)) return stopped;
  }
  return 0;
}

Bitboard OutpostContesters(const Facts& facts, Side side, Square square) {
  const Side enemy = Other(side);
  return facts.Own(enemy, PieceKind::kKnight) |
         (facts.Own(enemy, PieceKind::kBishop) & ColourOf(square));
}

Bitboard ScreenedMinors(const Facts& facts, Side side) {
  const Bitboard minors =
      facts.Own(side, PieceKind::kKnight) | facts.Own(side, PieceKind::kBishop);
  return minors &
         Forward(Other(side), facts.position().Pieces(PieceKind::kPawn));
}

Bitboard FarControl(const Facts& facts, Side side) {
  constexpr Bitboard kWhiteHalf =
      RankMask(0) | RankMask(1) | RankMask(2) | RankMask(3);
  return facts.Attacked(side) &
         (side == Side::kWhite ? ~kWhiteHalf : kWhiteHalf);
}

Bitboard SquareTakenPawns(const Facts& facts, Side side) {
  const Bitboard knights = facts.Own(side, PieceKind::kKnight);
  Bitboard taken = 0;
  for (const Square white_square : {kC3, kF3}) {
    const Square square = Relative(side, white_square);
    if (Contains(facts.Pawns(side).pawns, square) &&
        Contains(knights, NaturalKnight(side, square))) {
      taken |= Bit(square);
    }
  }
  return taken;
}

}  // namespace assay
