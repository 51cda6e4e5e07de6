// Negamax with alpha-beta windows and principal variation search. Scores are
// the side to move's inside; they become White's at the very end. A mate is
// kMate less the plies to it, so that nearer mates are better.
#include "assay/proof/search.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <memory>
#include <utility>

#include "assay/facts/exchange.h"
#include "assay/proof/checking_squares.h"
#include "assay/proof/mate_scan.h"
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
constexpr int kClaimableClock = 100;  // plies
constexpr int kUnknownDepth = -100;
constexpr std::uint64_t kCancelEvery = 256;
// The margins and depths below are our own: chosen by the depth reached and the
// games won at equal nodes, not derived.
//
// A null move is searched this much shallower, a ply more from kDeepNull on.
constexpr int kNullReduction = 2;
constexpr int kDeepNull = 5;
// Piece moves that make having to move a burden no more.
constexpr int kLeastPieceMoves = 4;
// Quiet moves from this one on are first tried a ply shallower, from
// kReduceMoreFrom on two.
constexpr int kReduceFrom = 2;
constexpr int kReduceMoreFrom = 8;
constexpr int kLeastReducedDepth = 3;
// With so few plies left, a static score this much a ply above the window will
// stay above it.
constexpr int kSafeDepth = 3;
constexpr Centipawns kSafeMargin = 70;
// With so few plies left, quiet moves are not tried where the static score is
// this much below the window, nor after the first ones.
constexpr int kHopelessDepth = 3;
constexpr Centipawns kHopelessMargin[kHopelessDepth + 1] = {0, 120, 220, 350};
constexpr int kQuietTries[kHopelessDepth + 1] = {0, 6, 10, 18};
// A capture in quiescence must bring the static score this near the window.
constexpr Centipawns kCaptureMargin = 150;
// Without a move from the table, deep nodes are searched a ply shallower: what
// they find is there next time.
constexpr int kLeastUnguidedDepth = 4;
// Mates in so many moves are looked for by trying everything before the search,
// and shorter ones than it found after it, each within a share of the nodes.
constexpr int kScanned = 3;
constexpr std::uint64_t kScanShare = 12;
// Half the first window of an iteration, around the score of the one before.
constexpr Centipawns kHalfWindow = 40;
constexpr int kLeastWindowDepth = 4;

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
    best_line_ = {moves[0]};
    best_score_ = Evaluate(root_);
    const int deepest = std::clamp(limits_.depth, 1, kMostDepth);
    result.complete = true;
    if (limits_.shortcuts && ScanForMates(moves, 1, kScanned, deepest)) {
      return MateFound();
    }
    for (int depth = 1; depth <= deepest; ++depth) {
      const int found = Iterate(depth);
      if (stopped_) {
        result.complete = false;
        break;
      }
      result.depth = depth;
      // A mate within the depth searched cannot be improved by going on.
      if (std::abs(found) >= kMateInRange && kMate - std::abs(found) <= depth) {
        break;
      }
    }
    if (limits_.shortcuts && best_score_ >= kMateInRange &&
        ScanForMates(moves, first_unscanned_, (kMate - best_score_) / 2,
                     kMostDepth)) {
      return MateFound();
    }
    int score = Sign(root_.side_to_move()) * best_score_;
    result.line = best_line_;
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

  // Looks for a mate in `from` to `to` moves by trying everything, within the
  // depth and a share of the nodes. The clocks must leave time for it.
  bool ScanForMates(const MoveList& moves, int from, int to, int depth) {
    const std::uint64_t left = limits_.nodes - std::min(nodes_, limits_.nodes);
    MateScan scan(left / kScanShare, limits_.cancelled);
    bool found = false;
    for (int n = from; n <= to && 2 * n - 1 <= depth; ++n) {
      if (root_.halfmove_clock() + 2 * n >= kClaimableClock) break;
      std::vector<Move> line = scan.Find(root_, moves, n);
      found = !line.empty();
      if (found) best_line_ = std::move(line);
      if (found || scan.exhausted()) break;
      first_unscanned_ = n + 1;
    }
    nodes_ += std::min(scan.nodes(), left);
    return found;
  }

  SearchResult MateFound() const {
    SearchResult result;
    result.line = best_line_;
    result.depth = static_cast<int>(best_line_.size());
    result.mate_in = (result.depth + 1) / 2 * Sign(root_.side_to_move());
    result.nodes = nodes_;
    result.complete = true;
    return result;
  }

  // One iteration, with a narrow window first where the score is expected.
  int Iterate(int depth) {
    path_ = limits_.played;
    path_.push_back(root_.hash());
    if (limits_.shortcuts && depth >= kLeastWindowDepth &&
        std::abs(best_score_) < kMateInRange) {
      root_alpha_ = best_score_ - kHalfWindow;
      root_beta_ = best_score_ + kHalfWindow;
      const int found = Full(root_, depth, 0, root_alpha_, root_beta_, true);
      if (stopped_ || (found > root_alpha_ && found < root_beta_)) return found;
    }
    root_alpha_ = -kInfinity;
    root_beta_ = kInfinity;
    return Full(root_, depth, 0, -kInfinity, kInfinity, true);
  }

  // A root move is the best so far: kept even if the iteration is not finished,
  // since the best of the one before was tried first.
  void NoteBest(int score) {
    if (score <= root_alpha_ || score >= root_beta_) return;
    best_score_ = score;
    best_line_.assign(lines_[0].begin(), lines_[0].begin() + line_length_[0]);
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
    if (position.halfmove_clock() >= kClaimableClock)
      return !IsCheckmate(position);
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
    if (depth <= 0 && !in_check) {
      return Quiet(position, ply, true, alpha, beta);
    }
    if (depth <= 0) depth = 1;  // a check is always answered
    if (ply >= kMostPly - 1) return Evaluate(position);
    ++nodes_;
    if (OutOfBudget()) return 0;
    const bool may_cut = limits_.shortcuts && ply > 0 && beta - alpha == 1;
    const TableEntry known = Known(position);
    if (may_cut && known.depth >= depth && Settles(known, ply, alpha, beta)) {
      return FromTable(known.score, ply);
    }
    MoveList moves;
    if (ply == 0) {
      AddFirstMoves(moves);
    } else {
      LegalMoves(position, moves);
    }
    if (moves.empty()) return in_check ? ply - kMate : 0;
    Node node = {position, moves, known.move, depth, ply, alpha, beta};
    node.in_check = in_check;
    if (may_cut && !in_check && std::abs(beta) < kMateInRange) {
      node.static_score = Static(position, known);
      node.may_prune = true;
      if (depth <= kSafeDepth &&
          node.static_score - kSafeMargin * depth >= beta) {
        return node.static_score;
      }
      if (may_pass && PassRefutes(node)) return beta;
    }
    if (limits_.shortcuts && ply > 0 && known.move.is_null() &&
        depth >= kLeastUnguidedDepth) {
      --node.depth;
    }
    return TryMoves(node);
  }

  // A position being searched.
  struct Node {
    const Position& position;
    const MoveList& moves;
    const Move table_move;
    int depth;
    const int ply;
    int alpha;
    const int beta;
    int static_score = kNoStatic;
    bool in_check = false;
    bool may_prune = false;  // the static score is there
  };

  // What the table has of a position; depth below everything if nothing.
  TableEntry Known(const Position& position) const {
    if (const TableEntry* entry = table_.Find(position.hash())) return *entry;
    TableEntry none;
    none.depth = kUnknownDepth;
    return none;
  }

  static bool Settles(const TableEntry& entry, int ply, int alpha, int beta) {
    const int score = FromTable(entry.score, ply);
    return entry.bound == Bound::kExact ||
           (entry.bound == Bound::kLower && score >= beta) ||
           (entry.bound == Bound::kUpper && score <= alpha);
  }

  int Static(const Position& position, const TableEntry& known) const {
    return known.static_score == kNoStatic ? Evaluate(position)
                                           : known.static_score;
  }

  void Keep(const Position& position, Move move, int score, int static_score,
            int depth, int ply, Bound bound) {
    table_.Store({position.hash(), move,
                  static_cast<std::int16_t>(ToTable(score, ply)),
                  static_cast<std::int16_t>(static_score),
                  static_cast<std::int8_t>(depth), bound});
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

  // Whether even passing keeps the score above the window. Not where few piece
  // moves are left: there, having to move can lose.
  bool PassRefutes(const Node& node) {
    if (node.depth < kNullReduction + 1 || node.static_score < node.beta ||
        !HasPieceMoves(node.position, node.moves)) {
      return false;
    }
    const int reduction = kNullReduction + (node.depth >= kDeepNull ? 1 : 0);
    const Position passed = node.position.AfterPass();
    path_.push_back(passed.hash());
    const int score = -Full(passed, node.depth - 1 - reduction, node.ply + 1,
                            -node.beta, 1 - node.beta, false);
    path_.pop_back();
    return !stopped_ && score >= node.beta;
  }

  // Whether a quiet move that gives no check is left out.
  static bool IsHopeless(const Node& node, int tried) {
    if (!node.may_prune || node.depth > kHopelessDepth || tried == 0) {
      return false;
    }
    return tried >= kQuietTries[node.depth] ||
           node.static_score + kHopelessMargin[node.depth] <= node.alpha;
  }

  int Reduction(const Node& node, int tried) const {
    if (!limits_.shortcuts || node.in_check || tried < kReduceFrom ||
        node.depth < kLeastReducedDepth) {
      return 0;
    }
    return tried >= kReduceMoreFrom && node.depth > kLeastReducedDepth ? 2 : 1;
  }

  // One move of a node: the first with the whole window, the others only to
  // show that they are no better, and again where they are.
  int Try(const Node& node, const Position& next, int tried, int reduction) {
    const int depth = node.depth - 1;
    path_.push_back(next.hash());
    int score = 0;
    if (tried == 0) {
      score = -Full(next, depth, node.ply + 1, -node.beta, -node.alpha, true);
    } else {
      score = -Full(next, depth - reduction, node.ply + 1, -node.alpha - 1,
                    -node.alpha, true);
      if (score > node.alpha && reduction > 0 && !stopped_) {
        score = -Full(next, depth, node.ply + 1, -node.alpha - 1, -node.alpha,
                      true);
      }
      if (score > node.alpha && score < node.beta && !stopped_) {
        score = -Full(next, depth, node.ply + 1, -node.beta, -node.alpha, true);
      }
    }
    path_.pop_back();
    return score;
  }

  int TryMoves(Node& node) {
    const Position& position = node.position;
    OrderedMoves ordered(position, node.moves, node.table_move, memory_,
                         node.ply);
    MoveList failed;  // quiet moves that did not cut off
    const int first_alpha = node.alpha;
    int best = -kInfinity;
    Move best_move;
    int tried = 0;
    for (Move move = ordered.Next(); !move.is_null(); move = ordered.Next()) {
      const Position next = position.After(move);
      const bool quiet = !IsTactical(position, move);
      const bool calm = quiet && !next.InCheck();
      if (calm && IsHopeless(node, tried)) {
        best = std::max(best, node.alpha);
        continue;
      }
      const int score =
          Try(node, next, tried, calm ? Reduction(node, tried) : 0);
      if (stopped_) return 0;
      ++tried;
      if (score > best) {
        best = score;
        best_move = move;
        if (score > node.alpha) {
          node.alpha = score;
          SetLine(node.ply, move);
          if (node.ply == 0) NoteBest(score);
        }
      }
      if (node.alpha >= node.beta) {
        if (quiet) NoteCutoff(node, move, failed);
        break;
      }
      if (quiet) failed.Add(move);
    }
    const Bound bound = best >= node.beta    ? Bound::kLower
                        : best > first_alpha ? Bound::kExact
                                             : Bound::kUpper;
    Keep(position, best_move, best, node.static_score, node.depth, node.ply,
         bound);
    return best;
  }

  void NoteCutoff(const Node& node, Move move, const MoveList& failed) {
    const Side side = node.position.side_to_move();
    memory_.NoteCutoff(side, move, node.ply, node.depth);
    for (const Move other : failed) {
      memory_.NoteFailure(side, other, node.depth);
    }
  }

  // Captures and promotions until none is worth trying; all evasions of a
  // check; checks too at the first ply.
  int Quiet(const Position& position, int ply, bool first, int alpha,
            int beta) {
    line_length_[ply] = 0;
    ++nodes_;
    if (OutOfBudget()) return 0;
    if (IsInsufficientMaterial(position)) return 0;
    if (ply >= kMostPly - 1) return Evaluate(position);
    const bool may_cut = limits_.shortcuts && beta - alpha == 1;
    const int depth = first ? 0 : -1;
    const TableEntry known = Known(position);
    if (may_cut && known.depth >= depth && Settles(known, ply, alpha, beta)) {
      return FromTable(known.score, ply);
    }
    const bool in_check = position.InCheck();
    MoveList moves;
    Node node = {position, moves, known.move, depth, ply, alpha, beta};
    node.in_check = in_check;
    node.may_prune = may_cut && !in_check && std::abs(alpha) < kMateInRange;
    if (!in_check) {
      node.static_score = Static(position, known);
      if (node.static_score >= beta) {
        if (!HasLegalMove(position)) return 0;
        Keep(position, Move(), node.static_score, node.static_score, depth, ply,
             Bound::kLower);
        return node.static_score;
      }
    }
    LegalMoves(position, moves);
    if (moves.empty()) return in_check ? ply - kMate : 0;
    if (in_check) {
      OrderedMoves evasions(position, moves, known.move, memory_, kMostPly);
      return TryQuietly(node, evasions);
    }
    const CheckingSquares checks(position);
    OrderedMoves worth(position, moves, known.move, first ? &checks : nullptr);
    return TryQuietly(node, worth);
  }

  // Whether a move in quiescence is not worth trying: a quiet one without
  // check, what is simply taken back at a loss, or (a shortcut) a capture that
  // wins too little to matter.
  bool IsPointless(const Node& node, const Position& next, Move move) const {
    const bool tactical = IsTactical(node.position, move);
    if (!tactical && !next.InCheck()) return true;
    if (tactical && node.may_prune &&
        node.static_score + Gain(node.position, move) + kCaptureMargin <=
            node.alpha &&
        !next.InCheck()) {
      return true;
    }
    return LosesMaterial(node.position, next, move);
  }

  int TryQuietly(Node& node, OrderedMoves& ordered) {
    int best = node.in_check ? -kInfinity : node.static_score;
    const int first_alpha = node.alpha;
    node.alpha = std::max(node.alpha, best);
    Move best_move;
    for (Move move = ordered.Next(); !move.is_null(); move = ordered.Next()) {
      const Position next = node.position.After(move);
      if (!node.in_check && IsPointless(node, next, move)) continue;
      const int score =
          -Quiet(next, node.ply + 1, false, -node.beta, -node.alpha);
      if (stopped_) return 0;
      if (score > best) {
        best = score;
        best_move = move;
        if (score > node.alpha) {
          node.alpha = score;
          SetLine(node.ply, move);
        }
      }
      if (node.alpha >= node.beta) break;
    }
    const Bound bound = best >= node.beta    ? Bound::kLower
                        : best > first_alpha ? Bound::kExact
                                             : Bound::kUpper;
    // What was left out keeps the score at most at the window.
    if (bound == Bound::kUpper && node.may_prune) best = first_alpha;
    Keep(node.position, best_move, best, node.static_score, node.depth,
         node.ply, bound);
    return best;
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
  int root_alpha_ = -kInfinity;
  int root_beta_ = kInfinity;
  int first_unscanned_ = 1;  // moves to a mate
  int best_score_ = 0;       // the side to move's view
  std::vector<Move> best_line_;
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
  SearchLimits granted = limits;
  // Given up before it began: as little as there is, and no large table.
  if (limits.cancelled != nullptr && *limits.cancelled) granted.nodes = 1;
  // The line tables are some 30 KB: kept off small stacks.
  const auto searcher = std::make_unique<Searcher>(position, weights, granted);
  return searcher->Run();
}

}  // namespace assay
