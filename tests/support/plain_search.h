// The value of a position as proof/search.h defines it, by a plain negamax: no
// reductions, no table, no iterations, no memory of any kind. Alpha-beta
// windows alone cut, which leaves the value at the root exact. Slow.
#ifndef ASSAY_TESTS_SUPPORT_PLAIN_SEARCH_H_
#define ASSAY_TESTS_SUPPORT_PLAIN_SEARCH_H_

#include <algorithm>
#include <cstdint>
#include <vector>

#include "assay/facts/exchange.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "assay/rules/position.h"
#include "assay/terms/ledger.h"

namespace assay {
namespace testing_support {

class PlainSearch {
 public:
  // Beyond any evaluation; a mate is this less the plies to it.
  static constexpr int kMate = 30000;

  // The value for the side to move.
  int Value(const Position& root, int depth) {
    path_ = {root.hash()};
    return FullWidth(root, depth, 0, -2 * kMate, 2 * kMate);
  }

 private:
  int Static(const Position& position) const {
    return Sign(position.side_to_move()) * ScoreOf(position, weights_);
  }

  static bool IsCapture(const Position& position, Move move) {
    return move.type() == Move::Type::kEnPassant ||
           !position.At(move.to()).empty();
  }

  static int Gain(const Position& position, Move move) {
    int gain = 0;
    if (move.type() == Move::Type::kEnPassant) {
      gain = ExchangeValue(PieceKind::kPawn);
    } else if (!position.At(move.to()).empty()) {
      gain = ExchangeValue(position.At(move.to()).kind());
    }
    if (move.is_promotion()) {
      gain += ExchangeValue(move.promotion()) - ExchangeValue(PieceKind::kPawn);
    }
    return gain;
  }

  // What wins most first: for the time alone.
  static std::vector<Move> Sorted(const Position& position) {
    MoveList list;
    LegalMoves(position, list);
    std::vector<Move> moves(list.begin(), list.end());
    std::stable_sort(moves.begin(), moves.end(), [&](Move a, Move b) {
      return Gain(position, a) > Gain(position, b);
    });
    return moves;
  }

  bool OccurredOnPath(const Position& position) const {
    // The position itself is the path's last; only reversible moves lie
    // between it and one that it can equal.
    return std::count(path_.begin(), path_.end() - 1, position.hash()) > 0;
  }

  int FullWidth(const Position& position, int depth, int ply, int alpha,
                int beta) {
    if (ply > 0 &&
        (IsInsufficientMaterial(position) || IsSeventyFiveMoveDraw(position) ||
         IsFiftyMoveClaim(position) || OccurredOnPath(position))) {
      return 0;
    }
    if (depth == 0 && !position.InCheck()) {
      return Quiescence(position, ply, true, alpha, beta);
    }
    const std::vector<Move> moves = Sorted(position);
    if (moves.empty()) return position.InCheck() ? ply - kMate : 0;
    int best = -2 * kMate;
    for (const Move move : moves) {
      const Position next = position.After(move);
      path_.push_back(next.hash());
      best = std::max(best, -FullWidth(next, std::max(depth, 1) - 1, ply + 1,
                                       -beta, -std::max(alpha, best)));
      path_.pop_back();
      if (best >= beta) break;
    }
    return best;
  }

  int Quiescence(const Position& position, int ply, bool first, int alpha,
                 int beta) {
    if (IsInsufficientMaterial(position)) return 0;
    const bool in_check = position.InCheck();
    const std::vector<Move> moves = Sorted(position);
    if (moves.empty()) return in_check ? ply - kMate : 0;
    int best = in_check ? -2 * kMate : Static(position);
    for (const Move move : moves) {
      if (best >= beta) break;
      const Position next = position.After(move);
      if (!in_check) {
        const bool capture_or_promotion =
            IsCapture(position, move) || move.is_promotion();
        if (!capture_or_promotion && !(first && next.InCheck())) continue;
        if (ExchangeValueOf(next, move.to()) > Gain(position, move)) continue;
      }
      best = std::max(best, -Quiescence(next, ply + 1, false, -beta,
                                        -std::max(alpha, best)));
    }
    return best;
  }

  const Weights weights_;
  std::vector<std::uint64_t> path_;  // hashes from the root to the position
};

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_PLAIN_SEARCH_H_
