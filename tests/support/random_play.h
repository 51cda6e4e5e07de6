// Positions from games of random legal moves, the same ones on every machine:
// the outputs of std::mt19937_64 are fixed by the C++ standard.
#ifndef ASSAY_TESTS_SUPPORT_RANDOM_PLAY_H_
#define ASSAY_TESTS_SUPPORT_RANDOM_PLAY_H_

#include <cstdint>
#include <random>

#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "tests/support/printers.h"

namespace assay {
namespace testing_support {

// Where games start, in turn: the initial position, and positions from which
// castling, promotion and en passant come about more often than from it.
inline constexpr const char* kRandomPlayStarts[] = {
    "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
    "r3k2r/pp4pp/8/2pp1pp1/2PP1PP1/8/PP4PP/R3K2R w KQkq - 0 1",
    "rnbqkbnr/8/8/PPPPPPPP/pppppppp/8/8/RNBQKBNR w KQkq - 0 1",
    "n1n1k3/PPP3pp/8/8/8/8/pp3PPP/3K1N1N b - - 0 1",
    "4k3/pppppppp/8/8/8/8/PPPPPPPP/4K3 w - - 0 1",
};
inline constexpr int kLongestRandomGame = 300;

// Calls visit(position, move) for `count` positions, the move being the legal
// one that is played next. A game ends without a legal move, with bare kings'
// material or after kLongestRandomGame plies.
template <class Visit>
void PlayAtRandom(std::uint64_t seed, int count, Visit visit) {
  std::mt19937_64 random(seed);
  int visited = 0;
  while (visited < count) {
    for (const char* start : kRandomPlayStarts) {
      Position position = FromFen(start);
      for (int ply = 0; ply < kLongestRandomGame && visited < count; ++ply) {
        MoveList moves;
        LegalMoves(position, moves);
        if (moves.empty() || IsInsufficientMaterial(position)) break;
        const Move move = moves[random() % moves.size()];
        visit(static_cast<const Position&>(position), move);
        ++visited;
        position = position.After(move);
      }
    }
  }
}

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_RANDOM_PLAY_H_
