// The weights of the evaluator: one struct, with defaults and the reason for
// each.
//
// A weight is a pair of centipawns, middlegame and ending, from the view of
// the side that has the feature. "Kaufman 1999" is L. Kaufman, "The Evaluation
// of Material Imbalances", Chess Life, March 1999. "Measured" means: fitted by
// logistic regression to the results of the positions in ASSAY_DATA's fit file,
// then rounded by hand towards what the trade teaches.
#ifndef ASSAY_TERMS_WEIGHTS_H_
#define ASSAY_TERMS_WEIGHTS_H_

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "absl/status/statusor.h"
#include "assay/base/score.h"

namespace assay {

struct Weights {
  // Material, each piece or pawn more than the opponent has. Kaufman 1999, in
  // both phases: pawn 1, knight and bishop 3 1/4, rook 5, queen 9 3/4.
  Tapered pawn{100, 100};
  Tapered knight{325, 325};
  Tapered bishop{325, 325};
  Tapered rook{500, 500};
  Tapered queen{975, 975};

  // Each knight, for four own pawns above five (below: the reverse): 1/16 pawn
  // for each pawn. Knights need pawns to stand behind. Kaufman 1999.
  Tapered knight_pawns{25, 25};
  // Each rook, for two own pawns above five: -1/8 pawn for each pawn. Rooks
  // need open lines. Kaufman 1999.
  Tapered rook_pawns{-25, -25};

  // Bishops of both colours with all sixteen pawns on and no ram on files c to
  // f: half a pawn. Kaufman 1999.
  Tapered bishop_pair{50, 50};
  // The pair, for each ram on files c to f: four of them take back nearly all
  // of it, as the handbooks have it for a locked centre. Own reasoning.
  Tapered bishop_pair_ram{-10, -10};
  // The pair, for each pawn of either side gone from the sixteen: lines open
  // as pawns go. Measured: nothing in the middlegame, a little in the ending.
  Tapered bishop_pair_pawn_gone{0, 2};
  // The pair, for each pawn break on files c to f that could dissolve a ram:
  // a third of a ram's price comes back. Own reasoning; measured about the
  // same.
  Tapered bishop_pair_lever{3, 3};

  // Each pawn of a file beyond the first. Shannon 1950 calls half a pawn a
  // rough estimate for all doubled pawns; measured it is far less.
  Tapered doubled_pawns{-8, -16};
  // The same, where the doubled pawns have no neighbour either: neither can be
  // guarded by a pawn, and one blocks the other. Common practice.
  Tapered doubled_isolated{-8, -10};
  // The same, on a file half-open for the opponent: they can be attacked from
  // the front. Common practice.
  Tapered doubled_open{-6, -3};
  // Comes back where a lever or a pawn break of theirs can undouble them soon:
  // up to half the price. Measured, less in the middlegame than in the ending.
  Tapered doubled_lever{3, 9};

  // A pawn without neighbours: no pawn can guard it or its stop square.
  // Measured; Shannon 1950 guesses half a pawn.
  Tapered isolated_pawn{-8, -14};
  // More on a file half-open for the opponent, whose rooks see it. Measured.
  Tapered isolated_open{-14, -4};

  // A pawn left behind its neighbours that cannot step up safely. With an
  // enemy pawn on its file it is no target, yet it cramps its side. Measured.
  Tapered backward_pawn{-12, -9};
  // More on a file half-open for the opponent: the textbook weakness. Measured.
  Tapered backward_open{-12, -11};

  // A passed pawn on the side's second to seventh rank. Grows with every step,
  // in the ending twice as fast: fewer pieces can stop it. Measured.
  Tapered passed_rank2{0, 4};
  Tapered passed_rank3{0, 6};
  Tapered passed_rank4{4, 20};
  Tapered passed_rank5{16, 52};
  Tapered passed_rank6{52, 100};
  Tapered passed_rank7{84, 150};
  // Guarded by a pawn of its own.
  Tapered passed_protected{10, 11};
  // A piece of the opponent stands on its stop square (for each rank beyond
  // the third that the pawn has reached): a blockade takes most of the push.
  Tapered passed_blockaded{0, -8};

  // Each square of useful scope more than is typical for the kind (knight 4,
  // bishop 4, rook 5, queen 8: means over the fit file). Measured.
  Tapered knight_scope{8, 14};
  Tapered bishop_scope{7, 8};
  Tapered rook_scope{6, 7};
  Tapered queen_scope{3, 6};

  // A pawn on c3 or f3 while the knight of that wing is at home: it must go
  // where it does less. Two squares of scope, at 8 each; measured about 20.
  Tapered knight_square_taken{-16, 0};

  // Each of the files at the king without a shelter pawn. Measured. All values
  // of this group are for a full attacking force (king.cc), and nothing in an
  // ending, where the king comes out to fight.
  Tapered shelter_gap{-10, 0};
  // Each flank pawn moved beside the king: the squares it no longer guards can
  // never be guarded by it again. Own reasoning, kept small: on average what
  // the move gains in room outweighs it, and what it opens is counted apart.
  Tapered flank_pawn_moved{-3, 0};
  // A diagonal open to the king that an enemy queen or bishop moves on.
  Tapered diagonal_to_king{-6, 0};
  // More, where such a piece can enter it on its next move.
  Tapered diagonal_entered{-14, 0};
  // A file at the king open to both sides, the opponent with a rook or queen.
  // (A file that only the king's own pawn closes costs nothing measurable while
  // nothing stands on it: the pawn is shelter.) Measured.
  Tapered file_to_king_open{-18, 0};
  // An enemy rook or queen stands on such a file, or on one half-open for it;
  // comes on top. Measured.
  Tapered file_to_king_occupied{-14, 0};

  // Each safe square behind the own pawns more than the opponent has, with all
  // eight minor pieces on the board; in proportion with fewer. Measured.
  Tapered space{4, 4};

  // The move itself. On quiet positions hardly measurable; kept at less than a
  // tenth of a pawn. Own reasoning.
  Tapered tempo{8, 4};
};

// A weight by name, for files and for the fingerprint.
struct WeightField {
  std::string_view name;  // as in the struct
  Tapered Weights::*field;
};
const std::vector<WeightField>& WeightFields();

// A weights file: a line a weight, "name midgame endgame" in whole
// centipawns, in any order; "#" starts a comment. Weights that the text does
// not name keep their defaults. INVALID_ARGUMENT with a Problem for each bad
// line: no such weight, not two whole numbers, out of -10000 to 10000, named
// twice; and for texts above kMostWeightsBytes.
inline constexpr std::size_t kMostWeightsBytes = 65536;
absl::StatusOr<Weights> ParseWeights(std::string_view text);

// All weights in that form.
std::string ToText(const Weights& weights);

// Sixteen hexadecimal digits that change when any weight does.
std::string Fingerprint(const Weights& weights);

}  // namespace assay

#endif  // ASSAY_TERMS_WEIGHTS_H_
