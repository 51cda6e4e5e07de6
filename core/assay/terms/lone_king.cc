// A guide to the basic mates: where the lone king must be driven, and that the
// own king must come along. It gives a search something to follow until the
// mate is within its reach.
#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/facts/endings.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

// The furthest that a king can be from the edge, and from a corner or king.
constexpr int kMostFromEdge = 3;
constexpr int kMostApart = 7;

// The nearest square of the edge; on the first or last rank where both are as
// near.
Square NearestEdge(Square king) {
  const int file = FileOf(king) < 4 ? 0 : 7;
  const int rank = RankOf(king) < 4 ? 0 : 7;
  const Square on_file = MakeSquare(file, RankOf(king));
  const Square on_rank = MakeSquare(FileOf(king), rank);
  return KingDistance(king, on_file) < KingDistance(king, on_rank) ? on_file
                                                                   : on_rank;
}

// The nearest of the corners; of the mating side's first rank where two are as
// near.
Square NearestCorner(Bitboard corners, Side side, Square king) {
  Square nearest = kA1;
  int least = kMostApart + 1;
  for (const Square white_corner : {kA1, kH1, kA8, kH8}) {
    const Square corner = Relative(side, white_corner);
    if (Contains(corners, corner) && KingDistance(king, corner) < least) {
      nearest = corner;
      least = KingDistance(king, corner);
    }
  }
  return nearest;
}

}  // namespace

template <class Sink>
void AddLoneKing(const Facts& facts, const Weights& weights, Sink& sink) {
  for (const Side side : kSides) {
    if (!CanMateLoneKing(facts, side)) continue;
    const Square own = facts.position().King(side);
    const Square lone = facts.position().King(Other(side));
    const Square edge = NearestEdge(lone);
    const Square corner = NearestCorner(MatingCorners(facts, side), side, lone);
    const Tapered value =
        weights.lone_king_edge * (kMostFromEdge - KingDistance(lone, edge)) +
        weights.lone_king_corner * (kMostApart - KingDistance(lone, corner)) +
        weights.lone_king_near * (kMostApart - KingDistance(own, lone));
    sink.Add(TermId::kLoneKing, side, value, [&](Details& details) {
      details.Squares(facts.position().Occupied());
      details.Add(KingDistanceClaim(facts, Other(side), edge));
      details.Add(KingDistanceClaim(facts, Other(side), corner));
      // Where only two of the corners will do, the text names both.
      const Bitboard corners = MatingCorners(facts, side);
      for (const Square other : Each(corners & ~Bit(corner))) {
        if (PopCount(corners) > 2) break;
        details.Add(KingDistanceClaim(facts, Other(side), other));
      }
      details.Add(KingDistanceClaim(facts, side, lone));
      for (const PieceKind kind : kAllKinds) {
        if (facts.Own(side, kind) != 0) {
          details.Add(MaterialClaim(facts, side, kind));
        }
      }
    });
  }
}

ASSAY_INSTANTIATE_THEME(AddLoneKing);

}  // namespace assay
