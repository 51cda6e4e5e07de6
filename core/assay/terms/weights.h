// The weights of the evaluator: one struct, with defaults and the reason for
// each.
//
// A weight is a pair of centipawns, middlegame and ending, from the view of
// the side that has the feature. "Kaufman 1999" is L. Kaufman, "The Evaluation
// of Material Imbalances", Chess Life, March 1999. Every weight whose comment
// names no other source is fitted: by logistic regression on the results of
// 55,251 quiet positions of 10,984 games (ASSAY_DATA's fit file) and nothing
// else, material as published, the right sign and a size that a coach would
// grant as bounds, with a slight pull towards a size by reasoning; then rounded
// to whole numbers, above 12 to even ones, above 20 to fives, above 70 to tens.
// Where a bound holds a weight, its comment says what the results alone would
// have it be. A weight of 0 in one phase speaks of the other alone.
#ifndef ASSAY_TERMS_WEIGHTS_H_
#define ASSAY_TERMS_WEIGHTS_H_

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "assay/base/score.h"

namespace assay {

struct Weights {
  // Material, each piece or pawn more than the opponent has. Kaufman 1999:
  // knight and bishop 3 1/4, rook 5, queen 9 3/4 of a pawn, in every phase.
  // Results would have a pawn less in the middlegame and more in the ending;
  // the yardstick of all other weights stays as published.
  Tapered pawn{100, 100};
  Tapered knight{325, 325};
  Tapered bishop{325, 325};
  Tapered rook{500, 500};
  Tapered queen{975, 975};

  // Each knight more than the opponent has, for four own pawns above five
  // (below: the reverse): 1/16 pawn for each pawn. Knights need pawns to stand
  // behind. Kaufman 1999. Where both have as many knights, the results see no
  // such difference between their pawns; of the rest they alone would have
  // less, but the published sums of material rest on it.
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
  // as pawns go. Nothing measurable in the middlegame; in the ending a little,
  // by own reasoning.
  Tapered bishop_pair_pawn_gone{0, 2};
  // The pair, for each pawn break on files c to f that could dissolve a ram:
  // a third of a ram's price comes back. Own reasoning.
  Tapered bishop_pair_lever{3, 3};

  // Each pawn of a file beyond the first. Shannon 1950 calls half a pawn a
  // rough estimate for all doubled pawns; the results have it far less.
  Tapered doubled_pawns{-11, -14};
  // The same, where the doubled pawns have no neighbour either: neither can be
  // guarded by a pawn, and one blocks the other.
  Tapered doubled_isolated{-16, -14};
  // The same, on a file half-open for the opponent: they can be attacked from
  // the front. Nothing measurable in the ending; kept by common practice.
  Tapered doubled_open{-14, -2};
  // Comes back where a lever or a pawn break of theirs can undouble them soon:
  // up to the price in the ending, less in the middlegame, where it takes time.
  Tapered doubled_lever{2, 12};

  // A pawn without neighbours: no pawn can guard it or its stop square.
  // Shannon 1950 guesses half a pawn. The results see nothing in the
  // middlegame that islands and open files do not tell; a little is kept.
  Tapered isolated_pawn{-4, -7};
  // More on a file half-open for the opponent, whose rooks see it.
  Tapered isolated_open{-7, -2};

  // A pawn left behind its neighbours that cannot step up safely. With an
  // enemy pawn on its file it is no target, yet it cramps its side.
  Tapered backward_pawn{-11, -5};
  // More on a file half-open for the opponent: the textbook weakness.
  Tapered backward_open{-9, -4};

  // Either, while enemy pieces hold the square ahead of it: one stands there,
  // or more of them than of the own look at it (Nimzowitsch's blockade).
  Tapered weak_pawn_held{-2, -9};
  // Such a pawn, or the front one of doubled pawns that no pawn guards, for
  // each piece by which attackers (after one more move of the side's own)
  // outnumber defenders (after one more of theirs), two at most.
  Tapered weak_pawn_besieged{-16, -11};

  // Two pawns side by side in the middle that have no neighbours: they take
  // space and can become targets. They are rare: the sizes are common practice
  // within wide intervals.
  Tapered hanging_pawns{5, -6};
  // The base of a chain that an enemy pawn can attack on its next step, on a
  // file half-open for the opponent: rooks see it too. On a closed file the
  // results see nothing; what comes of the attack is counted apart.
  Tapered chain_base_hit{-8, -12};
  // Each pawn island more than the opponent has. The results alone: 22.
  Tapered pawn_island{-16, -2};
  // A pawn on its third rank that a pawn of the second guards: it holds two
  // squares of the fourth rank and leaves no loose pawn behind.
  Tapered pawn_link{5, 12};
  // Each rank beyond the third that the own pawns have gone further, added up
  // over all pawns: room for the pieces behind them, less for the others. The
  // results alone: 23 in the middlegame; held, since it is general.
  Tapered advanced_pawn{12, 9};
  // A pawn that can become passed on its third to sixth rank: for each rank
  // beyond the second.
  Tapered candidate{2, 2};
  // Each pawn more on the a- to c-files or the f- to h-files where the own king
  // stands and the enemy king does not: they shelter it, and it goes with them.
  // (Of a majority that no king stands by the results see nothing that its
  // candidates and passed pawns do not say.)
  Tapered wing_majority{12, 10};
  // Each pawn fewer than the opponent has on the wing where the own king is: in
  // the middlegame pawns count where the kings are.
  Tapered king_wing_minority{-25, 0};
  // Each pawn more on the d- and e-files: they hold the centre, and nothing can
  // drive pieces off for good but pawns.
  Tapered centre_majority{12, 0};
  // A hole on files c to f that an enemy knight or bishop stands on or attacks.
  // More in an ending, with fewer pieces to fight for it.
  Tapered hole{-3, -7};
  // More, on any file from b to g, where an enemy piece has settled on it.
  Tapered hole_occupied{-18, -9};

  // A passed pawn on the side's second to seventh rank. Grows with every step,
  // in the ending twice as fast: fewer pieces can stop it.
  Tapered passed_rank2{0, 3};
  Tapered passed_rank3{0, 4};
  Tapered passed_rank4{0, 16};
  Tapered passed_rank5{11, 65};
  Tapered passed_rank6{70, 120};
  Tapered passed_rank7{100, 190};
  // Guarded by a pawn of its own.
  Tapered passed_protected{9, 8};
  // A piece of the opponent stands on its stop square (for each rank beyond
  // the third that the pawn has reached): a blockade takes most of the push.
  Tapered passed_blockaded{-3, -9};

  // Passed pawns side by side, for each rank of the further one beyond the
  // third.
  Tapered passed_connected{0, 16};
  // No enemy pawn within three files: it draws the enemy king away.
  Tapered passed_outside{0, 10};
  // From the fifth rank on, where no enemy piece stands on or looks at the
  // squares ahead of it, for each rank beyond the fourth.
  Tapered passed_free_path{3, 25};
  // In the ending, each king's move that the own king is nearer to the square
  // ahead of it than the enemy king, from the fourth rank on; 4 at most.
  Tapered passed_king_nearer{0, 11};
  // An own rook behind it (Tarrasch's rule).
  Tapered rook_behind_passer{10, 18};

  // A knight or bishop on an outpost: it cannot be driven off by a pawn. All
  // that a settled piece is worth: such a square is no hole besides. The
  // results alone: 20 and 14 for a knight; held no lower than a bishop there.
  Tapered knight_outpost{25, 14};
  Tapered bishop_outpost{20, 14};
  // More, where no enemy minor piece can contest the square.
  Tapered outpost_uncontested{10, 4};
  // A knight or bishop that can reach an empty outpost in one or two moves.
  Tapered outpost_in_reach{3, 2};
  // A bishop, for each own pawn of the c- to f-files that stands fixed on its
  // colour in its way, and for each useful square that it has fewer than seven:
  // beside its own pawns it has nowhere else to work. Measured.
  Tapered bad_bishop{-2, -3};
  // A knight or bishop directly behind a pawn of either side: nothing comes at
  // it along the file, and no pawn drives it off from there. The results alone:
  // 21 in the ending.
  Tapered screened_minor{10, 16};
  // A knight instead of a bishop, for each ram on files c to f beyond the
  // first; below that the bishop gains. Handbook consensus for closed centres;
  // the results see it in the ending.
  Tapered knight_for_bishop_ram{4, 10};
  // A knight on the a- or h-file, beyond what it loses in scope.
  Tapered knight_on_rim{-18, -9};

  // A rook on an open file; on one half-open for it.
  Tapered rook_open_file{30, 3};
  Tapered rook_half_open_file{16, 2};
  // A rook on its seventh rank with something to attack there.
  Tapered rook_seventh{9, 20};
  // Two rooks behind one another on such a file. The results alone: 45 in the
  // ending, from few positions; held.
  Tapered doubled_rooks{11, 25};

  // What hangs, for each pawn's worth that captures there gain, the opponent to
  // move.
  Tapered hanging{-25, -25};
  // The most valuable thing that hangs with the owner to move, who will mostly
  // save it, for each pawn's worth.
  Tapered hanging_own_move{-4, -4};
  // What hangs besides it, for each pawn's worth: one move seldom saves two
  // things, so this is nearly as with the opponent to move.
  Tapered hanging_second{-20, -18};
  // A piece that nothing guards.
  Tapered loose_piece{-8, -3};
  // A pinned piece or pawn.
  Tapered pinned{-11, -20};
  // A piece that cannot get away, on top of what hangs. The results alone: 110;
  // rare, and search says the rest.
  Tapered trapped{-70, -70};
  // A piece that an enemy knight or bishop attacks, guarded or not: the
  // attacker may choose when to exchange. The results alone: 25 and 45; held
  // at a tempo and what the exchange is worth to who chooses it.
  Tapered under_fire{-20, -30};
  // A piece or pawn under attack that no pawn guards and one piece at most: in
  // an ending there is no other guard to take over.
  Tapered thinly_guarded{0, -18};
  // A queen out early, for each enemy piece or pawn that can attack it next.
  Tapered early_queen{-10, 0};

  // Each square of useful scope more than is typical for the kind (knight 4,
  // bishop 4, rook 5, queen 8: means over the fit file).
  Tapered knight_scope{7, 6};
  Tapered bishop_scope{4, 3};
  Tapered rook_scope{3, 3};
  Tapered queen_scope{1, 3};

  // A pawn on c3 or f3 while the knight of that wing is at home: it must go
  // where it does less.
  Tapered knight_square_taken{-20, 0};

  // Each of the files at the king without a shelter pawn. Little is left beside
  // what attacks the squares about the king: the results alone see nothing, and
  // the trade's direction is kept. All values from here to king_zone_open are
  // for a full attacking force (attacking_force.h), and nothing in an ending,
  // where the king comes out to fight, if they are not given there.
  Tapered shelter_gap{-3, 0};
  // Each flank pawn moved beside the king: the squares it no longer guards can
  // never be guarded by it again. Own reasoning, kept small: on average what
  // the move gains in room outweighs it, and what it opens is counted apart.
  Tapered flank_pawn_moved{-4, 0};
  // A diagonal open to a king on its wing that an enemy bishop moves on: the
  // bishop, often with the queen, comes or looks in along it.
  Tapered diagonal_to_king{-8, 0};
  // More, where no own bishop of that colour can stand in its way or be
  // exchanged for the other.
  Tapered diagonal_uncontested{-16, 0};
  // A file at the king open to both sides, the opponent with a rook or queen.
  // (A file that only the king's own pawn closes costs nothing measurable while
  // nothing stands on it: the pawn is shelter.)
  Tapered file_to_king_open{-25, 0};
  // An enemy rook or queen stands on such a file, or on one half-open for it;
  // comes on top.
  Tapered file_to_king_occupied{-6, 0};

  // Each pair of enemy pieces that look at the squares around the king.
  Tapered king_attackers{-20, 0};
  // Each such square that only the king guards.
  Tapered king_weak_square{-12, 0};
  // Each square at most two king moves from the king that two enemies attack.
  Tapered king_zone_twice{-18, 0};
  // Each such square that an enemy attacks and fewer than two of the own
  // guard.
  Tapered king_zone_open{-6, -10};
  // Each square from which an enemy piece could give check next without being
  // taken; any attacking force.
  Tapered check_square{-35, -18};
  // Each king move that an enemy knight, rook or queen stands nearer than five
  // to the king; bishops work from afar. Any attacking force.
  Tapered near_king{-7, -5};
  // A king that no square is left to, in the ending: mates and perpetual checks
  // begin there. The results alone: 85, from few positions; held.
  Tapered king_shut{0, -60};
  // A king still in the middle, in an open centre, queens on; in proportion in
  // more closed ones.
  Tapered uncastled{-40, 0};
  // More, where it can castle no more.
  Tapered castling_lost{-25, 0};
  // A king that has stepped ahead of its first rank on c to f, or beyond its
  // second anywhere, an enemy queen on; in proportion as above. As much as a
  // king in the middle that can castle no more, so that stepping out of the
  // first rank never looks like safety; the size by that reasoning.
  Tapered king_ahead{-65, 0};
  // More, for each rank beyond the second.
  Tapered king_ahead_rank{-25, 0};
  // In the ending, each move that a king is nearer to the centre than the
  // other.
  Tapered king_activity{0, 9};
  // In the ending, each move that a king is nearer to all pawns, on average,
  // than the other: it guards the own and attacks theirs.
  Tapered king_near_pawns{0, 25};
  // In the ending, each enemy pawn next to the king that no pawn guards: pieces
  // must stay to guard it, or it falls.
  Tapered king_raid{0, 25};

  // Each minor piece at home, in an open centre; in proportion in more closed
  // ones.
  Tapered undeveloped{-18, 0};
  // Each attacker more than the opponent has of the four centre squares. Little
  // beside scope and centre pawns; kept since every opening is taught by it.
  Tapered centre_control{1, 0};

  // Each square of the opponent's half more that the own pieces and pawns
  // attack than the opponent of the own half. Nothing in the middlegame beyond
  // what the pieces' scope counts for.
  Tapered far_control{0, 3};

  // Each safe square behind the own pawns more, with all eight minor pieces on
  // the board; in proportion with fewer. The results see most of it in how far
  // the pawns have gone; never less than two points, since plans to gain space
  // are told in these squares.
  Tapered space{2, 3};

  // King and pawn against king, won by the table, on top of what the pawn
  // counts for: beyond any doubt, and short of the queen that it will be. Own
  // reasoning.
  Tapered exact_win{600, 600};

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

  // The move itself: to act first, and to save what is under fire. A tenth of a
  // pawn.
  Tapered tempo{11, 6};
};

// A weight by name, for files and for the fingerprint.
struct WeightField {
  std::string_view name;  // as in the struct
  Tapered Weights::*field;
};
const std::vector<WeightField>& WeightFields();

}  // namespace assay

#endif  // ASSAY_TERMS_WEIGHTS_H_
