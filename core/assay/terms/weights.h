// The weights of the evaluator: one struct, with defaults and the reason for
// each.
//
// A weight is a pair of centipawns, middlegame and ending, from the view of
// the side that has the feature. "Kaufman 1999" is L. Kaufman, "The Evaluation
// of Material Imbalances", Chess Life, March 1999. "Measured" means: fitted by
// logistic regression to the results of the positions in ASSAY_DATA's fit file,
// then rounded by hand towards what the trade teaches; so is every weight whose
// comment names no other source. Some are kept at 0 in the ending or below what
// was measured, where the measured value speaks of something else.
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

  // A second rook, where the opponent has no pair of rooks: the two do the same
  // work. Kaufman 1999 for the direction; own reasoning for the size, a rook's
  // eighth of a pawn.
  Tapered second_rook{-12, -12};

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
  Tapered doubled_pawns{-5, -14};
  // The same, where the doubled pawns have no neighbour either: neither can be
  // guarded by a pawn, and one blocks the other. Common practice.
  Tapered doubled_isolated{-8, -11};
  // The same, on a file half-open for the opponent: they can be attacked from
  // the front. Common practice.
  Tapered doubled_open{-5, -2};
  // Comes back where a lever or a pawn break of theirs can undouble them soon:
  // up to half the price. Measured, less in the middlegame than in the ending.
  Tapered doubled_lever{3, 9};

  // A pawn without neighbours: no pawn can guard it or its stop square.
  // Measured; Shannon 1950 guesses half a pawn.
  Tapered isolated_pawn{-5, -10};
  // More on a file half-open for the opponent, whose rooks see it. Measured.
  Tapered isolated_open{-5, -2};

  // A pawn left behind its neighbours that cannot step up safely. With an
  // enemy pawn on its file it is no target, yet it cramps its side. Measured.
  Tapered backward_pawn{-14, -7};
  // More on a file half-open for the opponent: the textbook weakness. Measured.
  Tapered backward_open{-9, -6};

  // Either, while enemy pieces hold the square ahead of it: one stands there,
  // or more of them than of the own look at it. Common practice (Nimzowitsch's
  // blockade).
  Tapered weak_pawn_held{-4, -9};
  // Such a pawn, or the front one of doubled pawns that no pawn guards, for
  // each piece by which attackers (after one more move of the side's own)
  // outnumber defenders (after one more of theirs), two at most.
  Tapered weak_pawn_besieged{-12, -14};

  // Two pawns side by side in the middle that have no neighbours: they take
  // space and can become targets.
  Tapered hanging_pawns{5, -4};
  // The base of a chain that an enemy pawn can attack on its next step.
  Tapered chain_base_hit{-2, -3};
  // Each pawn island more than the opponent has.
  Tapered pawn_island{-12, -3};
  // A pawn that can become passed on its third to sixth rank: for each rank
  // beyond the second.
  Tapered candidate{3, 4};
  // Each pawn more on the a- to c-files or the f- to h-files, away from the
  // enemy king, where it can make a passed pawn.
  Tapered wing_majority{0, 2};
  // A hole on files c to f that an enemy knight or bishop stands on or attacks.
  // Measured; nothing in an ending, where kings guard squares.
  Tapered hole{-7, 0};

  // A passed pawn on the side's second to seventh rank. Grows with every step,
  // in the ending twice as fast: fewer pieces can stop it. Measured.
  Tapered passed_rank2{0, 4};
  Tapered passed_rank3{0, 6};
  Tapered passed_rank4{2, 18};
  Tapered passed_rank5{12, 52};
  Tapered passed_rank6{52, 104};
  Tapered passed_rank7{86, 160};
  // Guarded by a pawn of its own.
  Tapered passed_protected{10, 11};
  // A piece of the opponent stands on its stop square (for each rank beyond
  // the third that the pawn has reached): a blockade takes most of the push.
  Tapered passed_blockaded{-2, -8};

  // Passed pawns side by side, for each rank of the further one beyond the
  // third.
  Tapered passed_connected{2, 13};
  // No enemy pawn within three files: it draws the enemy king away.
  Tapered passed_outside{0, 8};
  // From the fifth rank on, where no enemy piece stands on or looks at the
  // squares ahead of it, for each rank beyond the fourth.
  Tapered passed_free_path{5, 25};
  // In the ending, each king's move that the own king is nearer to the square
  // ahead of it than the enemy king, from the fourth rank on; 4 at most.
  Tapered passed_king_nearer{0, 9};
  // An own rook behind it (Tarrasch's rule).
  Tapered rook_behind_passer{8, 12};

  // A knight or bishop on an outpost: it cannot be driven off by a pawn.
  Tapered knight_outpost{20, 10};
  Tapered bishop_outpost{14, 8};
  // More, where no enemy minor piece can contest the square.
  Tapered outpost_uncontested{9, 5};
  // A knight or bishop that can reach an empty outpost in one or two moves.
  Tapered outpost_in_reach{4, 0};
  // A bishop, for each own pawn of the c- to f-files that stands fixed on its
  // colour in its way.
  Tapered bad_bishop{-8, -9};
  // A knight instead of a bishop, for each ram on files c to f beyond the
  // first; below that the bishop gains. Handbook consensus for closed centres.
  Tapered knight_for_bishop_ram{4, 4};
  // A knight on the a- or h-file, beyond what it loses in scope.
  Tapered knight_on_rim{-14, -6};

  // A rook on an open file; on one half-open for it.
  Tapered rook_open_file{23, 5};
  Tapered rook_half_open_file{9, 4};
  // A rook on its seventh rank with something to attack there.
  Tapered rook_seventh{10, 26};
  // Two rooks behind one another on such a file.
  Tapered doubled_rooks{12, 12};

  // What hangs, for each pawn's worth that captures there gain: the opponent to
  // move, and the owner to move, who will mostly save it.
  Tapered hanging{-22, -24};
  Tapered hanging_own_move{-4, -7};
  // A piece that nothing guards.
  Tapered loose_piece{-6, -4};
  // A pinned piece or pawn.
  Tapered pinned{-12, -16};
  // A piece that cannot get away, on top of what hangs.
  Tapered trapped{-38, -34};
  // A queen out early, for each enemy piece or pawn that can attack it next.
  Tapered early_queen{-6, 0};

  // Each square of useful scope more than is typical for the kind (knight 4,
  // bishop 4, rook 5, queen 8: means over the fit file). Measured.
  Tapered knight_scope{7, 11};
  Tapered bishop_scope{5, 6};
  Tapered rook_scope{4, 5};
  Tapered queen_scope{2, 4};

  // A pawn on c3 or f3 while the knight of that wing is at home: it must go
  // where it does less. Two squares of scope, at 8 each; measured about 20.
  Tapered knight_square_taken{-18, 0};

  // Each of the files at the king without a shelter pawn. Measured. All values
  // of this group are for a full attacking force (king.cc), and nothing in an
  // ending, where the king comes out to fight.
  Tapered shelter_gap{-5, 0};
  // Each flank pawn moved beside the king: the squares it no longer guards can
  // never be guarded by it again. Own reasoning, kept small: on average what
  // the move gains in room outweighs it, and what it opens is counted apart.
  Tapered flank_pawn_moved{-3, 0};
  // A diagonal open to the king that an enemy queen or bishop moves on.
  Tapered diagonal_to_king{-5, 0};
  // More, where such a piece can enter it on its next move.
  Tapered diagonal_entered{-16, 0};
  // A file at the king open to both sides, the opponent with a rook or queen.
  // (A file that only the king's own pawn closes costs nothing measurable while
  // nothing stands on it: the pawn is shelter.) Measured.
  Tapered file_to_king_open{-20, 0};
  // An enemy rook or queen stands on such a file, or on one half-open for it;
  // comes on top. Measured.
  Tapered file_to_king_occupied{-8, 0};

  // Each pair of enemy pieces that look at the squares around the king.
  Tapered king_attackers{-26, 0};
  // Each such square that only the king guards.
  Tapered king_weak_square{-15, 0};
  // A king still in the middle, in an open centre, queens on; in proportion in
  // more closed ones.
  Tapered uncastled{-32, 0};
  // More, where it can castle no more.
  Tapered castling_lost{-18, 0};
  // A king that has stepped ahead of its first rank on c to f, or beyond its
  // second anywhere, an enemy queen on; in proportion as above. As much as a
  // king in the middle that can castle no more, so that stepping out of the
  // first rank never looks like safety; the size by that reasoning.
  Tapered king_ahead{-55, 0};
  // More, for each rank beyond the second. Own reasoning.
  Tapered king_ahead_rank{-20, 0};
  // In the ending, each move that a king is nearer to the centre than the
  // other.
  Tapered king_activity{0, 12};

  // Each minor piece at home, in an open centre; in proportion in more closed
  // ones.
  Tapered undeveloped{-11, 0};
  // Each attacker more than the opponent has of the four centre squares.
  Tapered centre_control{3, 0};

  // Each safe square behind the own pawns more than the opponent has, with all
  // eight minor pieces on the board; in proportion with fewer. Measured.
  Tapered space{7, 7};

  // King and pawn against king, won by the table: half a queen on top of what
  // the pawn counts for, beyond any doubt and short of the queen itself. Own
  // reasoning.
  Tapered exact_win{480, 480};

  // Lucena's position, won: what the rook's pawn is worth beyond its rank, for
  // it promotes or costs a rook. Own reasoning: beyond dispute together with
  // the pawn, short of a rook.
  Tapered lucena{320, 320};

  // A lone king against pieces that can mate it: each move that it is nearer to
  // the edge than the centre squares are. Own reasoning, as the next two: more
  // than what activity and the centre count for, since nothing else matters
  // here, and edge and corner alike, so that the edge is no hiding place.
  Tapered lone_king_edge{60, 60};
  // The same, each move that it is nearer than the far end of the board to a
  // corner; for bishop and knight one of the bishop's colour.
  Tapered lone_king_corner{60, 60};
  // The same, each move that the own king is nearer to it than across the whole
  // board: the pieces alone do not drive a king.
  Tapered lone_king_near{40, 40};

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
