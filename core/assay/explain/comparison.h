// Two to eight positions, or moves from one position, side by side.
#ifndef ASSAY_EXPLAIN_COMPARISON_H_
#define ASSAY_EXPLAIN_COMPARISON_H_

#include <string>
#include <vector>

#include "assay/explain/assayer.h"

namespace assay {

inline constexpr std::size_t kLeastCompared = 2;
inline constexpr std::size_t kMostCompared = 8;

// What one term is worth in each of the compared positions, both sides'
// entries together.
struct TermComparison {
  TermId term = TermId::kMaterial;
  std::string title;                 // for readers, in their language
  std::vector<Centipawns> value_cp;  // White's view
};

struct Comparison {
  // Of the positions after the moves (without moves: of the position itself),
  // then of the others.
  std::vector<Explanation> explanations;
  // In the catalogue's order; terms without an entry anywhere are left out.
  std::vector<TermComparison> by_term;
  // What decides between them.
  std::string decides;
  Message decides_said;
  // Behind `decides`: about the position, those of a candidate after its move.
  std::vector<Claim> claims;
  // The same about each of the others, in their order.
  std::vector<std::vector<Claim>> claims_of_others;
};

// The moves are legal. Options hold for each of the positions.
Comparison Compare(const Assayer& assayer, const Position& position,
                   const std::vector<Move>& moves,
                   const std::vector<Position>& others,
                   const ExplainOptions& options = {});

}  // namespace assay

#endif  // ASSAY_EXPLAIN_COMPARISON_H_
