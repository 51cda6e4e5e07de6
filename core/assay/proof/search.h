// Bounded search: what a position comes to under best play, as far as a budget
// of nodes allows.
//
// Iterative deepening alpha-beta over the score-only evaluation. The budget is
// nodes, never time, and the transposition table is the call's own, so that
// equal calls give equal results on every machine.
//
// What is searched, so exactly that it can be written again without this code
// (tests/support/plain_search.h does). All values are the side to move's; a
// mate counts beyond every evaluation, the nearer the more. The value of a
// position at a depth is
//   - 0, but not at the root: where it is drawn by rule (dead, or seventy-five
//     moves) or a draw can be claimed: fifty moves without a capture or a
//     pawn's move, or the same position earlier in the line (or among those
//     played before), once is enough. A mate comes before both clocks;
//   - at depth 0, out of check: its quiescence value, this being the first
//     ply. In check it is searched as at depth 1;
//   - with no legal move: mated, or 0 for stalemate;
//   - else the best over all legal moves of minus the value of the position
//     after the move, a ply less deep.
// The quiescence value is 0 where neither side can mate; mated or 0 with no
// legal move; in check the best over all legal moves of minus the quiescence
// value after it; else the best of the static score and of minus the
// quiescence value after each move worth trying. Worth trying are captures,
// promotions to any piece and, at the first ply alone, quiet moves that give
// check; but no move after which the piece moved can be taken for more than
// the move won: where the exchange value of its square (facts/exchange.h) is
// above what was captured and what a promotion added. Clocks and repetitions
// are not looked at.
//
// Shortcuts (SearchLimits::shortcuts) reach deeper with the same nodes and give
// up exactness: cut-offs by the table, null moves, reductions, moves left out
// near the leaves. To make up for it, mates in up to three are first looked for
// by trying everything (mate_scan.h), within a share of the nodes; and where
// the budget ends inside an iteration, what it has found by then counts.
//
//   SearchLimits limits;
//   limits.nodes = 20000;
//   const SearchResult found = Search(position, weights, limits);
//   found.mate_in != 0 ? ... : found.score_cp
#ifndef ASSAY_PROOF_SEARCH_H_
#define ASSAY_PROOF_SEARCH_H_

#include <atomic>
#include <cstdint>
#include <vector>

#include "assay/rules/position.h"
#include "assay/terms/weights.h"

namespace assay {

// Of one question by itself.
inline constexpr std::uint64_t kDefaultSearchNodes = 24000;
// Of one explanation, all its proofs together: well under 60 ms on one core.
inline constexpr std::uint64_t kDefaultProofNodes = 2 * kDefaultSearchNodes;
// Iterations end here whatever the budget.
inline constexpr int kMostDepth = 64;

struct SearchLimits {
  std::uint64_t nodes = kDefaultSearchNodes;  // at least 1 is searched
  int depth = kMostDepth;                     // full-width plies, at most
  // Looked at every 256 nodes; when it turns true the search ends soon.
  const std::atomic<bool>* cancelled = nullptr;
  // Hash keys of the game's positions before this one, oldest first: to come
  // back to one of them counts as a repetition, as in the line itself.
  std::vector<std::uint64_t> played;
  // Off for tests: a plain full-width search with quiescence at the leaves.
  bool shortcuts = true;
  // Not tried as a first move: what is best besides it? Null: all are tried.
  Move excluded;
};

struct SearchResult {
  Centipawns score_cp = 0;  // White's view; 0 where mate_in is set
  int mate_in = 0;          // moves, White's view: positive, White mates
  std::vector<Move> line;   // best play by both sides
  int depth = 0;            // of the last iteration that was finished
  std::uint64_t nodes = 0;
  bool complete = false;  // ended by itself, not by budget or cancellation
};

// Searches the position. A mated or stalemated one, or a drawn one by rule
// (dead, or seventy-five moves), is answered at once with an empty line; so is
// one whose only legal move is excluded. Where the side to move may claim a
// draw by the fifty-move rule, it is never worse off than 0; the line is what
// it plays if it does not claim.
SearchResult Search(const Position& position, const Weights& weights,
                    const SearchLimits& limits);

}  // namespace assay

#endif  // ASSAY_PROOF_SEARCH_H_
