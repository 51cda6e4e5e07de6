// Positions from games that look a little like games: of a few random moves the
// one that the static score likes best is played.
#ifndef ASSAY_TESTS_SUPPORT_PLAUSIBLE_PLAY_H_
#define ASSAY_TESTS_SUPPORT_PLAUSIBLE_PLAY_H_

#include <cstdint>
#include <random>

#include "assay/rules/movegen.h"
#include "assay/terms/ledger.h"
#include "tests/support/random_play.h"

namespace assay {
namespace testing_support {

inline Move PlausibleMove(const Position& position, const MoveList& moves,
                          std::mt19937_64& random) {
  constexpr int kTries = 8;
  const Weights weights;
  const int sign = Sign(position.side_to_move());
  Move best = moves[random() % moves.size()];
  int best_score = sign * ScoreOf(position.After(best), weights);
  for (int i = 1; i < kTries; ++i) {
    const Move move = moves[random() % moves.size()];
    const int score = sign * ScoreOf(position.After(move), weights);
    if (score > best_score) {
      best = move;
      best_score = score;
    }
  }
  return best;
}

// Calls visit(position) for `count` positions of games from the initial one.
template <class Visit>
void PlayPlausibly(std::uint64_t seed, int count, Visit visit) {
  constexpr int kLongestGame = 160;
  std::mt19937_64 random(seed);
  int visited = 0;
  while (visited < count) {
    Position position = Position::Initial();
    for (int ply = 0; ply < kLongestGame && visited < count; ++ply) {
      visit(static_cast<const Position&>(position));
      ++visited;
      MoveList moves;
      LegalMoves(position, moves);
      if (moves.empty()) break;
      position = position.After(PlausibleMove(position, moves, random));
    }
  }
}

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_PLAUSIBLE_PLAY_H_
