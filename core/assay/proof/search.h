// Bounded search: what a position comes to under best play, as far as a budget
// of nodes allows.
//
// Iterative deepening alpha-beta over the score-only evaluation, with a
// quiescence search of captures, promotions, check evasions and (at its first
// ply) checks. The budget is nodes, never time, and the transposition table is
// the call's own, so that equal calls give equal results on every machine.
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

// Of one explanation, all its proofs together: well under 60 ms on one core.
inline constexpr std::uint64_t kDefaultProofNodes = 24000;
// Iterations end here whatever the budget.
inline constexpr int kMostDepth = 64;

struct SearchLimits {
  std::uint64_t nodes = kDefaultProofNodes;  // at least 1 is searched
  int depth = kMostDepth;                    // full-width plies, at most
  // Looked at every 256 nodes; when it turns true the search ends soon.
  const std::atomic<bool>* cancelled = nullptr;
  // Off for tests: a plain full-width search with quiescence at the leaves.
  bool shortcuts = true;  // table cut-offs, reductions, null moves
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
// one whose only legal move is excluded.
SearchResult Search(const Position& position, const Weights& weights,
                    const SearchLimits& limits);

}  // namespace assay

#endif  // ASSAY_PROOF_SEARCH_H_
