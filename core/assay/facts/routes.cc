// Breadth first: each layer is the set of squares first reached in that many
// moves. Shortest routes are read back from the layers.
#include "assay/facts/routes.h"

#include <algorithm>

namespace assay {
namespace {

// OUTPOST_ROUTE claims have at most three moves.
constexpr int kLongestOutpostRoute = 3;

bool Walks(PieceKind kind) {
  return kind != PieceKind::kPawn && kind != PieceKind::kNone;
}

}  // namespace

Reach::Reach(const Facts& facts, Square from, int most_moves)
    : facts_(facts),
      from_(from),
      piece_(facts.position().At(from)),
      most_(std::clamp(most_moves, 0, kLongestRoute)) {
  layers_[0] = Bit(from);
  if (!Walks(piece_.kind()) || Contains(facts.Pinned(piece_.side()), from))
    return;
  forbidden_ = facts.position().Pieces(piece_.side()) |
               facts.Pawns(Other(piece_.side())).attacks;
  Bitboard seen = Bit(from);
  for (int moves = 1; moves <= most_; ++moves) {
    Bitboard reached = 0;
    for (const Square square : Each(layers_[moves - 1])) {
      reached |= StepsFrom(square);
    }
    layers_[moves] = reached & ~forbidden_ & ~seen;
    if (layers_[moves] == 0) return;
    seen |= layers_[moves];
  }
}

Bitboard Reach::StepsFrom(Square square) const {
  return PieceAttacks(piece_.kind(), square, facts_.position().Occupied());
}

int Reach::MovesTo(Square goal) const {
  for (int moves = 0; moves <= most_; ++moves) {
    if (Contains(layers_[moves], goal)) return moves;
  }
  return -1;
}

int Reach::MovesToAttack(Square goal) const {
  if (piece_.empty()) return -1;
  if (Contains(facts_.Attacks(from_), goal)) return 0;
  for (int moves = 1; moves <= most_; ++moves) {
    // Attacks are symmetric for all that walks: look from the goal.
    const Bitboard stops = layers_[moves] & ~Bit(goal);
    if ((StepsFrom(goal) & stops) != 0) return moves;
  }
  return -1;
}

std::vector<SquareList> Reach::RoutesTo(Square goal, std::size_t most) const {
  const int length = MovesTo(goal);
  if (length < 0) return {};
  // From the goal back, one layer at a time.
  std::vector<std::vector<Square>> backwards = {{goal}};
  for (int moves = length - 1; moves >= 0; --moves) {
    std::vector<std::vector<Square>> longer;
    for (const std::vector<Square>& route : backwards) {
      const Bitboard before = StepsFrom(route.back()) & layers_[moves];
      for (const Square square : Each(before)) {
        if (longer.size() == most) break;
        longer.push_back(route);
        longer.back().push_back(square);
      }
    }
    backwards = std::move(longer);
  }
  std::vector<SquareList> routes;
  routes.reserve(backwards.size());
  for (const std::vector<Square>& route : backwards) {
    SquareList squares;
    for (auto at = route.rbegin(); at != route.rend(); ++at) squares.Add(*at);
    routes.push_back(squares);
  }
  return routes;
}

std::vector<SquareList> OutpostRoutes(const Facts& facts, Side side) {
  std::vector<SquareList> routes;
  const Bitboard goals =
      facts.Pawns(side).outposts & ~facts.position().Occupied();
  if (goals == 0) return routes;
  const Bitboard minors =
      facts.Own(side, PieceKind::kKnight) | facts.Own(side, PieceKind::kBishop);
  for (const Square from : Each(minors)) {
    const Reach reach(facts, from, kLongestOutpostRoute);
    for (const Square goal : Each(goals)) {
      for (const SquareList& route : reach.RoutesTo(goal, 1)) {
        routes.push_back(route);
      }
    }
  }
  return routes;
}

}  // namespace assay
