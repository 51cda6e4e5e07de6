// What is true of the pawns alone: spans, weaknesses, rams, levers.
#ifndef ASSAY_FACTS_PAWNS_H_
#define ASSAY_FACTS_PAWNS_H_

#include "assay/base/bitboard.h"
#include "assay/rules/position.h"

namespace assay {

// The pawn skeleton as one side sees it. All sets are of the side's own pawns
// unless said otherwise; definitions are those of the claims of the same name.
struct PawnFacts {
  Bitboard pawns = 0;
  Bitboard attacks = 0;         // squares that they attack
  Bitboard attacked_twice = 0;  // squares that two of them attack
  Bitboard attack_span = 0;     // squares that they attack now or could after
                                // any advance
  Bitboard front_span = 0;      // squares ahead of them on their files
  Bitboard files = 0;           // all squares of the files that they stand on
  Bitboard doubled = 0;         // all pawns of files with two or more
  Bitboard isolated = 0;
  Bitboard backward = 0;
  Bitboard passed = 0;
  Bitboard candidates = 0;
  Bitboard rammed = 0;  // stop square holds an enemy pawn
  Bitboard levers = 0;  // attack an enemy pawn
  Bitboard chain_bases = 0;
  Bitboard holes = 0;     // squares: the side's own holes
  Bitboard outposts = 0;  // squares: guarded by a pawn of the side, never
                          // attackable by an enemy pawn
  int islands = 0;
  int advance = 0;  // ranks beyond the third, added up
};

// Facts of both sides, by Index(side).
void FindPawnFacts(const Position& position, PawnFacts (&facts)[2]);

// Files as the eight bits of the first rank: bit 0 is the a-file.
constexpr unsigned FileBits(Bitboard filled_files) {
  return static_cast<unsigned>(filled_files & kRank1);
}

}  // namespace assay

#endif  // ASSAY_FACTS_PAWNS_H_
