// The fixed positions that every benchmark uses, by name.
//
// All are our own but the published move-generation positions, marked as such.
// Distinct positions matter: a benchmark over one position measures caches.
#ifndef ASSAY_BENCH_POSITIONS_H_
#define ASSAY_BENCH_POSITIONS_H_

#include <cstdlib>
#include <iostream>
#include <vector>

#include "assay/notation/fen.h"
#include "assay/rules/movegen.h"
#include "assay/rules/position.h"

namespace assay::bench {

struct NamedPosition {
  const char* name;
  const char* fen;
};

inline constexpr NamedPosition kPositions[] = {
    {"start", "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1"},
    {"published_castling",
     "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1"},
    {"published_rook_ending", "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1"},
    {"open_centre",
     "r1bq1rk1/pp3ppp/2n2n2/2b5/2B5/2N2N2/PP3PPP/R1BQ1RK1 w - - 0 10"},
    {"locked_centre",
     "r1bq1rk1/pp1nbppp/2n1p3/2ppP3/3P1P2/2P1BN2/PP1NB1PP/R2Q1RK1 b - - 0 10"},
    {"isolated_pawn",
     "r2q1rk1/1b2bppp/p1n1pn2/1p6/3P4/PBN2N2/1P2QPPP/R1BR2K1 w - - 0 14"},
    {"doubled_pawns",
     "r1bq1rk1/pp2bppp/2n1pn2/2pp4/3P1B2/2PBPN2/P1P2PPP/R2Q1RK1 b - - 1 9"},
    {"opposite_castling",
     "r1b2rk1/ppq1bppp/2nppn2/8/3NP1P1/2N1B2P/PPPQ1P2/2KR1B1R b - - 0 11"},
    {"queenless", "r4rk1/pp3ppp/2p1bn2/4p3/4P3/2N1B3/PPP2PPP/R4RK1 w - - 0 13"},
    {"bishops_against_knights",
     "r3r1k1/1pp2pp1/p1nn3p/3p4/3P4/P1B2B1P/1PP2PP1/R3R1K1 w - - 4 20"},
    {"pawn_ending", "8/pp3k2/2p2p2/3p2p1/3P2P1/2P1KP2/PP6/8 w - - 0 35"},
    {"rook_ending", "4r1k1/5pp1/7p/1R6/1P6/6P1/5P1P/6K1 w - - 0 33"},
};

// The position of a FEN of the list; ends the program where it is faulty.
inline Position FromFen(const char* fen) {
  const absl::StatusOr<Position> position = PositionFromFen(fen);
  if (!position.ok()) {
    std::cerr << fen << ": " << position.status().message() << '\n';
    std::exit(1);
  }
  return *position;
}

// The named positions and all positions two plies from each: some thousands,
// all distinct, as a search or a service would meet them.
inline std::vector<Position> ManyPositions() {
  std::vector<Position> positions;
  for (const NamedPosition& named : kPositions) {
    const Position root = FromFen(named.fen);
    positions.push_back(root);
    MoveList first;
    LegalMoves(root, first);
    for (const Move move : first) {
      const Position next = root.After(move);
      positions.push_back(next);
      MoveList second;
      LegalMoves(next, second);
      for (const Move reply : second) positions.push_back(next.After(reply));
    }
  }
  return positions;
}

// Ends the program where an answer is not the known one: no time is worth
// anything for a wrong answer.
inline void Check(const char* what, long long found, long long expected) {
  if (found == expected) return;
  std::cerr << what << ": found " << found << ", expected " << expected << '\n';
  std::exit(1);
}

}  // namespace assay::bench

#endif  // ASSAY_BENCH_POSITIONS_H_
