// King, bishop and rook pawn against king, solved for the tests alone.
#ifndef ASSAY_TESTS_FACTS_BISHOP_AND_PAWN_H_
#define ASSAY_TESTS_FACTS_BISHOP_AND_PAWN_H_

#include <cstddef>
#include <vector>

#include "assay/base/bitboard.h"
#include "assay/base/side.h"
#include "assay/base/square.h"

namespace assay {

// How to take the few positions where promotion to queen or to rook would
// stalemate, so that only a new bishop or knight, which the solver does not
// play out, could win: results that are the same either way are exact.
enum class LesserPromotion { kDraws, kWins };

// White has a bishop and a pawn on the a-file. Retrograde iteration as in
// assay/facts/kpk.cc, a word of the bare king's squares at once; the ending
// that is left when the bishop falls is taken from there.
class BishopAndPawn {
 public:
  explicit BishopAndPawn(LesserPromotion lesser_promotion);

  // Whether White wins the position, which must be legal.
  bool Wins(Side to_move, Square pawn, Square bishop, Square king,
            Square bare_king) const {
    const Words& words = to_move == Side::kWhite ? white_moves_ : black_moves_;
    return Contains(words[Index(pawn, bishop, king)], bare_king);
  }

 private:
  using Words = std::vector<Bitboard>;

  static std::size_t Index(Square pawn, Square bishop, Square king) {
    return (static_cast<std::size_t>(RankOf(pawn)) * kSquares + bishop) *
               kSquares +
           king;
  }
  void Solve(Square pawn);
  bool Improve(Square pawn, Square bishop, Square king, Bitboard without);
  Bitboard PawnMoveWins(Square pawn, Square bishop, Square king) const;

  Bitboard PromotionWins(Square to, Square bishop, Square king) const;

  LesserPromotion lesser_promotion_;
  Words white_moves_;  // squares of the bare king where White wins
  Words black_moves_;
};

}  // namespace assay

#endif  // ASSAY_TESTS_FACTS_BISHOP_AND_PAWN_H_
