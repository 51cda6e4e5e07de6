// Mates in a few moves by trying everything: what a search that passes, prunes
// and reduces can miss (a mate that needs a quiet move and works only because
// the other side must move), and whether a mate is the shortest.
#ifndef ASSAY_PROOF_MATE_SCAN_H_
#define ASSAY_PROOF_MATE_SCAN_H_

#include <array>
#include <atomic>
#include <cstdint>
#include <vector>

#include "assay/rules/move.h"
#include "assay/rules/position.h"

namespace assay {

// One scan of one position, within a number of nodes: positions in which the
// moves were listed. Such a node costs a fraction of one with an evaluation.
class MateScan {
 public:
  // No scan goes further.
  static constexpr int kMostMoves = 8;

  MateScan(std::uint64_t most_nodes, const std::atomic<bool>* cancelled)
      : most_nodes_(most_nodes), cancelled_(cancelled) {}

  // The line of a mate by the side to move in exactly `moves`, beginning with
  // one of `first_moves`, against the longest defence; empty where there is
  // none, or exhausted() says that it is not known. That there is no shorter
  // one must be known before. Drawing rules other than stalemate are left out.
  std::vector<Move> Find(const Position& position, const MoveList& first_moves,
                         int moves);

  bool exhausted() const { return exhausted_; }
  std::uint64_t nodes() const { return nodes_; }

 private:
  bool Mates(const Position& position, int moves);
  bool IsMated(const Position& position, int moves);
  bool Refutes(const Position& position, Move reply, int moves);
  bool Count();
  std::vector<Move> LineAfter(const Position& position, int moves);

  const std::uint64_t most_nodes_;
  const std::atomic<bool>* const cancelled_;
  // The reply that refuted last, by the moves that were left.
  std::array<Move, kMostMoves> refutations_{};
  std::uint64_t nodes_ = 0;
  bool exhausted_ = false;
};

}  // namespace assay

#endif  // ASSAY_PROOF_MATE_SCAN_H_
