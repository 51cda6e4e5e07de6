// Routes: how a piece gets somewhere in moves of its own, on the board as it
// is.
//
// A route is a way of one piece over squares from where it stands to a goal.
// Each step is a move of that piece on the current board (passed squares
// empty; a stop may take an enemy piece or pawn); no stop after the first
// square is attacked by an enemy pawn; the piece is not pinned, neither to its
// king nor to a piece behind it. Pawns do not walk here.
//
// Routes ignore whose move it is and what the opponent does meanwhile: they
// count own moves, which is what plans are made of.
#ifndef ASSAY_FACTS_ROUTES_H_
#define ASSAY_FACTS_ROUTES_H_

#include <vector>

#include "assay/facts/claim.h"
#include "assay/facts/facts.h"

namespace assay {

// Longer routes are not looked for: a plan of more moves is a dream.
inline constexpr int kLongestRoute = 6;

// The squares that the piece on `from` can stand on after each number of moves.
class Reach {
 public:
  // For a knight, bishop, rook, queen or king; a pinned piece, a pawn or an
  // empty square reaches nothing but where it stands.
  Reach(const Facts& facts, Square from, int most_moves);

  Square from() const { return from_; }
  // The squares first reached in exactly `moves` moves.
  Bitboard NewAfter(int moves) const {
    return moves <= most_ ? layers_[moves] : 0;
  }
  // The fewest moves to stand on the square; -1 where it takes too many.
  int MovesTo(Square goal) const;
  // The fewest moves to attack the square, standing elsewhere; 0 where the
  // piece does so now, pinned or not; -1 where it takes too many.
  int MovesToAttack(Square goal) const;
  // All routes of the least length to the square, start included, in a fixed
  // order; at most `most` of them.
  std::vector<SquareList> RoutesTo(Square goal, std::size_t most) const;

 private:
  Bitboard StepsFrom(Square square) const;

  const Facts& facts_;
  const Square from_;
  const Piece piece_;
  const int most_;
  Bitboard forbidden_ = 0;  // where the piece may not stop
  Bitboard layers_[kLongestRoute + 1] = {};
};

// Routes of one to three moves of knights and bishops of the side to outposts
// that are empty now: for each piece and outpost, one of the shortest.
std::vector<SquareList> OutpostRoutes(const Facts& facts, Side side);

}  // namespace assay

#endif  // ASSAY_FACTS_ROUTES_H_
