// Empties ahead, a pawn to attack from there, and a pin looked at only for the
// few pawns that stand on a line with their king.
#include "assay/facts/levers.h"

namespace assay {
namespace {

// Whether the side's king is attacked once the pawn has advanced.
bool ExposesKing(const Position& position, Side side, Square from, Square to) {
  const Square king = position.King(side);
  if (Line(king, from) == 0) return false;
  const Bitboard after = (position.Occupied() ^ Bit(from)) | Bit(to);
  return position.Attackers(Other(side), king, after) != 0;
}

}  // namespace

LeverMoves FindLeverMoves(const Facts& facts, Side side) {
  return FindLeverMoves(facts, side, kAllSquares);
}

LeverMoves FindLeverMoves(const Facts& facts, Side side, Bitboard prey) {
  LeverMoves found;
  const Position& position = facts.position();
  const Bitboard empty = ~position.Occupied();
  const Bitboard enemy_pawns = facts.Pawns(Other(side)).pawns;
  const Bitboard pawns = facts.Pawns(side).pawns;
  const Bitboard one = Forward(side, pawns) & empty;
  const Bitboard two = Forward(side, one & RelativeRankMask(side, 2)) & empty;
  // From where an enemy pawn would be attacked.
  const Bitboard useful = PawnAttacks(Other(side), enemy_pawns & prey);
  if (((one | two) & useful) == 0 || facts.InCheck()) return found;
  const auto collect = [&](Bitboard arrivals, int steps) {
    for (const Square to : Each(arrivals & useful)) {
      const int offset = (side == Side::kWhite ? 8 : -8) * steps;
      const auto from = static_cast<Square>(to - offset);
      if (ExposesKing(position, side, from, to)) continue;
      found.moves[found.size++] = {from, to,
                                   PawnAttacks(side, to) & enemy_pawns};
    }
  };
  collect(one, 1);
  collect(two, 2);
  return found;
}

}  // namespace assay
