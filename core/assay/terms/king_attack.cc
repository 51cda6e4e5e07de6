// Enemy pieces about a king: how near they stand, what they attack there, and
// the checks that they have at hand. These count with any force left: in an
// ending, rooks near a king cut it off and chase it.
#include "assay/facts/claim_makers.h"
#include "assay/facts/kings.h"
#include "assay/terms/attacking_force.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

// King moves from which on a piece is not near.
constexpr int kFar = 5;

template <class Sink>
void AddNearPieces(const Facts& facts, const Weights& weights, Side side,
                   Sink& sink) {
  const Side enemy = Other(side);
  const Square king = facts.position().King(side);
  int nearness = 0;
  Bitboard near = 0;
  for (const Square square : Each(facts.Own(enemy, PieceKind::kKnight) |
                                  facts.Own(enemy, PieceKind::kRook) |
                                  facts.Own(enemy, PieceKind::kQueen))) {
    const int distance = KingDistance(king, square);
    if (distance >= kFar) continue;
    nearness += kFar - distance;
    near |= Bit(square);
  }
  if (nearness == 0) return;
  sink.Add(TermId::kNearKing, side, weights.near_king * nearness,
           [&](Details& details) {
             details.Squares(near | Bit(king));
             for (const Square square : Each(near)) {
               details.Add(KingDistanceClaim(facts, side, square));
             }
           });
}

template <class Sink>
void AddCheckSquares(const Facts& facts, const Weights& weights, Side side,
                     Sink& sink) {
  const Side enemy = Other(side);
  const Bitboard squares = CheckSquares(facts, enemy);
  if (squares == 0) return;
  sink.Add(TermId::kCheckSquares, side,
           weights.check_square * PopCount(squares), [&](Details& details) {
             details.Squares(squares | facts.Own(side, PieceKind::kKing));
             for (const Square square : Each(squares)) {
               details.Add(CheckSquareClaim(facts, enemy, square));
             }
           });
}

template <class Sink>
void AddZone(const Facts& facts, const Weights& weights, Side side,
             Sink& sink) {
  const int force = AttackingForce(facts, Other(side));
  if (force == 0) return;
  const AttackedZone zone = FindAttackedZone(facts, side);
  const Tapered value = weights.king_zone_twice * PopCount(zone.twice) +
                        weights.king_zone_open * PopCount(zone.thin);
  sink.Add(TermId::kKingZone, side, Scale(value, force, kFullForce),
           [&](Details& details) {
             details.Squares(facts.Own(side, PieceKind::kKing));
             details.Add(KingZoneClaim(facts, side));
           });
}

template <class Sink>
void AddShutKing(const Facts& facts, const Weights& weights, Side side,
                 Sink& sink) {
  if (facts.phase() == kFullPhase || !IsKingShut(facts, side)) return;
  sink.Add(TermId::kKingShut, side, weights.king_shut, [&](Details& details) {
    const Bitboard king = facts.Own(side, PieceKind::kKing);
    details.Squares(king);
    details.Add(SquaresClaim(ClaimKind::kKingShut, side, king));
  });
}

}  // namespace

template <class Sink>
void AddKingAttack(const Facts& facts, const Weights& weights, Sink& sink) {
  for (const Side side : kSides) {
    AddNearPieces(facts, weights, side, sink);
    AddCheckSquares(facts, weights, side, sink);
    AddZone(facts, weights, side, sink);
    AddShutKing(facts, weights, side, sink);
  }
}

ASSAY_INSTANTIATE_THEME(AddKingAttack);

}  // namespace assay
