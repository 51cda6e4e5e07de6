// Negamax with alpha-beta windows and principal variation search. Scores are
// the side to move's inside; they become White's at the very end. A mate is
// kMate less the plies to it, so that nearer mates are better.
#include "assay/proof/search.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <memory>

#include "assay/facts/exchange.h"
#include "assay/proof/ordering.h"
#include "assay/proof/table.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "assay/terms/ledger.h"

namespace assay {
namespace {

constexpr int kMate = 30000;
constexpr int kMateInRange = kMate - 1000;  // beyond: a mate
constexpr int kInfinity = 32000;
// The evaluation is kept within what is no mate.
constexpr int kMostEvaluation = 20000;
constexpr int kMostPly = 120;
constexpr std::uint64_t kCancelEvery = 256;
// A null move is searched this much shallower (Donninger's and others' usual
// two plies; own choice, not tuned).
constexpr int kNullReduction = 2;
// Piece moves that make having to move a burden no more: own choice.
constexpr int kLeastPieceMoves = 4;
// Quiet moves from this one on are first tried a ply shallower.
constexpr int kReduceFrom = 4;
constexpr int kLeastReducedDepth = 3;

class Searcher {
 public:
  Searcher(const Position& root, const Weights& weights,
           const SearchLimits& limits)
      : root_(root), weights_(weights), limits_(limits), table_(limits.nodes) {}

  SearchResult Run() {
    SearchResult result;
    MoveList moves;
    AddFirstMoves(moves);
    if (moves.empty() || IsDrawnByRule(root_)) {
      result.complete = true;
      if (root_.InCheck() && !HasLegalMove(root_)) {
        // Mated already: zero moves are left, so the score says who won.
        result.score_cp = -Sign(root_.side_to_move()) * kMostEvaluation;
      }
      return result;
    }
    // Whatever the budget, one legal move is named.
    std::vector<Move> best = {moves[0]};
    int score = Sign(root_.side_to_move()) * Evaluate(root_);
    const int deepest = std::clamp(limits_.depth, 1, kMostDepth);
    result.complete = true;
    for (int depth = 1; depth <= deepest; ++depth) {
      line_length_[0] = 0;
      path_.assign(1, root_.hash());
      const int found = Full(root_, depth, 0, -kInfinity, kInfinity, true);
      if (stopped_) {
        result.complete = false;
        break;
      }
      score = Sign(root_.side_to_move()) * found;
      best.assign(lines_[0].begin(), lines_[0].begin() + line_length_[0]);
      result.depth = depth;
      // A mate within the depth searched cannot be improved by going on.
      if (std::abs(found) >= kMateInRange && kMate - std::abs(found) <= depth) {
        break;
      }
    }
    result.line = best;
    result.nodes = nodes_;
    // Whoever may claim a draw is not worse off than that.
    if (IsFiftyMoveClaim(root_)) {
      score = root_.side_to_move() == Side::kWhite ? std::max(score, 0)
                                                   : std::min(score, 0);
    }
    if (std::abs(score) >= kMateInRange) {
      const int plies = kMate - std::abs(score);
      result.mate_in = (plies + 1) / 2 * (score > 0 ? 1 : -1);
    } else {
      result.score_cp = score;
    }
    return result;
  }

 private:
  void AddFirstMoves(MoveList& moves) const {
    MoveList all;
    LegalMoves(root_, all);
    for (const Move move : all) {
      if (move != limits_.excluded) moves.Add(move);
    }
  }

  // From the side to move's view.
  int Evaluate(const Position& position) const {
    const int score =
        Sign(position.side_to_move()) * ScoreOf(position, weights_);
    return std::clamp(score, -kMostEvaluation, kMostEvaluation);
  }

  bool OutOfBudget() {
    const bool cancelled = nodes_ % kCancelEvery == 0 &&
                           limits_.cancelled != nullptr &&
                           limits_.cancelled->load(std::memory_order_relaxed);
    stopped_ = stopped_ || cancelled || nodes_ >= limits_.nodes;
    return stopped_;
  }

  static bool IsDrawnByRule(const Position& position) {
    return IsInsufficientMaterial(position) || IsSeventyFiveMoveDraw(position);
  }

  // A position of the path again, or fifty moves without progress: either side
  // may claim a draw.
  bool IsClaimable(const Position& position) const {
    if (position.halfmove_clock() >= 100) return !IsCheckmate(position);
    const int back = std::min<int>(position.halfmove_clock(),
                                   static_cast<int>(path_.size()) - 1);
    for (int i = 2; i <= back; i += 2) {
      if (path_[path_.size() - 1 - static_cast<std::size_t>(i)] ==
          position.hash()) {
        return true;
      }
    }
    return false;
  }

  void SetLine(int ply, Move move) {
    lines_[ply][0] = move;
    const int tail = ply + 1 < kMostPly ? line_length_[ply + 1] : 0;
    std::copy_n(lines_[ply + 1].begin(), tail, lines_[ply].begin() + 1);
    line_length_[ply] = tail + 1;
  }

  int Full(const Position& position, int depth, int ply, int alpha, int beta,
           bool may_pass) {
    line_length_[ply] = 0;
    if (ply > 0 && (IsDrawnByRule(position) || IsClaimable(position))) return 0;
    const bool in_check = position.InCheck();
    if (depth <= 0 && !in_check) return Quiet(position, ply, 0, alpha, beta);
    if (depth <= 0) depth = 1;  // a check is always answered
    if (ply >= kMostPly - 1) return Evaluate(position);
    ++nodes_;
    if (OutOfBudget()) return 0;

    Move table_move;
    if (const TableEntry* entry = table_.Find(position.hash())) {
      table_move = entry->move;
      const int score = FromTable(entry->score, ply);
      const bool deep_enough = entry->depth >= depth;
      if (limits_.shortcuts && ply > 0 && deep_enough && beta - alpha == 1 &&
          (entry->bound == Bound::kExact ||
           (entry->bound == Bound::kLower && score >= beta) ||
           (entry->bound == Bound::kUpper && score <= alpha))) {
        return score;
      }
    }
    MoveList moves;
    if (ply == 0) {
      AddFirstMoves(moves);
    } else {
      LegalMoves(position, moves);
    }
    if (moves.empty()) return in_check ? ply - kMate : 0;
    if (limits_.shortcuts && may_pass && !in_check &&
        PassRefutes(position, moves, depth, ply, beta)) {
      return beta;
    }
    return TryMoves(position, moves, table_move, depth, ply, alpha, beta,
                    in_check);
  }

  // Whether even passing keeps the score above the window. Not in check, and
  // not where few piece moves are left: there, having to move can lose.
  bool PassRefutes(const Position& position, const MoveList& moves, int depth,
                   int ply, int beta) {
    if (ply == 0 || depth < kNullReduction + 1 ||
        std::abs(beta) >= kMateInRange || !HasPieceMoves(position, moves) ||
        Evaluate(position) < beta) {
      return false;
    }
    const Position passed = position.AfterPass();
    path_.push_back(passed.hash());
    const int score = -Full(passed, depth - 1 - kNullReduction, ply + 1, -beta,
                            1 - beta, false);
    path_.pop_back();
    return !stopped_ && score >= beta;
  }

  static bool HasPieceMoves(const Position& position, const MoveList& moves) {
    int found = 0;
    for (const Move move : moves) {
      const PieceKind kind = position.At(move.from()).kind();
      if (kind == PieceKind::kPawn || kind == PieceKind::kKing) continue;
      if (++found >= kLeastPieceMoves) return true;
    }
    return false;
  }

  int TryMoves(const Position& position, const MoveList& moves, Move table_move,
               int depth, int ply, int alpha, int beta, bool in_check) {
    OrderedMoves ordered(position, moves, table_move, memory_, ply);
    const int first_alpha = alpha;
    int best = -kInfinity;
    Move best_move;
    int tried = 0;
    for (Move move = ordered.Next(); !move.is_null(); move = ordered.Next()) {
      const Position next = position.After(move);
      const bool quiet = !IsTactical(position, move);
      path_.push_back(next.hash());
      int score = 0;
      if (tried == 0) {
        score = -Full(next, depth - 1, ply + 1, -beta, -alpha, true);
      } else {
        const bool reduce = limits_.shortcuts && quiet && !in_check &&
                            tried >= kReduceFrom &&
                            depth >= kLeastReducedDepth && !next.InCheck();
        score = -Full(next, depth - 1 - (reduce ? 1 : 0), ply + 1, -alpha - 1,
                      -alpha, true);
        if (score > alpha && (reduce || score < beta)) {
          score = -Full(next, depth - 1, ply + 1, -beta, -alpha, true);
        }
      }
      path_.pop_back();
      if (stopped_) return 0;
      ++tried;
      if (score > best) {
        best = score;
        best_move = move;
        if (score > alpha) {
          alpha = score;
          SetLine(ply, move);
        }
      }
      if (alpha >= beta) {
        if (quiet) {
          memory_.NoteCutoff(position.side_to_move(), move, ply, depth);
        }
        break;
      }
    }
    const Bound bound = best >= beta         ? Bound::kLower
                        : best > first_alpha ? Bound::kExact
                                             : Bound::kUpper;
    table_.Store({position.hash(), best_move,
                  static_cast<std::int16_t>(ToTable(best, ply)),
                  static_cast<std::int8_t>(depth), bound});
    return best;
  }

  // Captures and promotions until none is worth trying; all evasions of a
  // check; checks too at the first ply.
  int Quiet(const Position& position, int ply, int quiet_ply, int alpha,
            int beta) {
    line_length_[ply] = 0;
    ++nodes_;
    if (OutOfBudget()) return 0;
    const bool in_check = position.InCheck();
    if (IsInsufficientMaterial(position)) return 0;
    if (ply >= kMostPly - 1) return Evaluate(position);
    MoveList moves;
    LegalMoves(position, moves);
    if (moves.empty()) return in_check ? ply - kMate : 0;
    int best = -kInfinity;
    if (!in_check) {
      best = Evaluate(position);
      if (best >= beta) return best;
      alpha = std::max(alpha, best);
    }
    OrderedMoves ordered(position, moves, Move(), memory_, kMostPly);
    for (Move move = ordered.Next(); !move.is_null(); move = ordered.Next()) {
      const bool tactical = IsTactical(position, move);
      if (!in_check && !tactical && quiet_ply > 0) break;  // quiet ones follow
      const Position next = position.After(move);
      if (!in_check) {
        if (!tactical && !next.InCheck()) continue;
        // What is simply taken back at a loss proves nothing.
        if (LosesMaterial(position, next, move)) continue;
      }
      const int score = -Quiet(next, ply + 1, quiet_ply + 1, -beta, -alpha);
      if (stopped_) return 0;
      if (score > best) {
        best = score;
        if (score > alpha) {
          alpha = score;
          SetLine(ply, move);
        }
      }
      if (alpha >= beta) break;
    }
    return best;
  }

  // Whether the move gives more on its square than it takes there.
  static bool LosesMaterial(const Position& position, const Position& next,
                            Move move) {
    const int taken = ExchangeValue(position.At(move.to()).kind());
    const int promoted =
        move.is_promotion()
            ? ExchangeValue(move.promotion()) - ExchangeValue(PieceKind::kPawn)
            : 0;
    const int en_passant = move.type() == Move::Type::kEnPassant
                               ? ExchangeValue(PieceKind::kPawn)
                               : 0;
    return ExchangeValueOf(next, move.to()) > taken + promoted + en_passant;
  }

  // Mates are stored as seen from the position, not from the root.
  static int ToTable(int score, int ply) {
    if (score >= kMateInRange) return score + ply;
    if (score <= -kMateInRange) return score - ply;
    return score;
  }
  static int FromTable(int score, int ply) {
    if (score >= kMateInRange) return score - ply;
    if (score <= -kMateInRange) return score + ply;
    return score;
  }

  const Position& root_;
  const Weights& weights_;
  const SearchLimits& limits_;
  Table table_;
  QuietMemory memory_;
  std::vector<std::uint64_t> path_;  // hashes from the root to the position
  std::array<std::array<Move, kMostPly + 1>, kMostPly + 1> lines_{};
  std::array<int, kMostPly + 1> line_length_{};
  std::uint64_t nodes_ = 0;
  bool stopped_ = false;
};

}  // namespace

SearchResult Search(const Position& position, const Weights& weights,
                    const SearchLimits& limits) {
  // The line tables are some 30 KB: kept off small stacks.
  const auto searcher = std::make_unique<Searcher>(position, weights, limits);
  return searcher->Run();
}

}  // namespace assay
