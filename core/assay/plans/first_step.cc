#include "assay/plans/first_step.h"

#include <algorithm>
#include <tuple>

#include "absl/container/inlined_vector.h"
#include "assay/facts/exchange.h"
#include "assay/plans/pawn_play.h"
#include "assay/plans/stops.h"
#include "assay/rules/movegen.h"
#include "assay/terms/ledger.h"

namespace assay {
namespace {

// Captures in a row that are counted. Longer runs are rare, and nobody plans
// by them.
constexpr int kMostCaptures = 6;

// Preparing moves that are looked at closely.
constexpr std::size_t kMostTried = 12;

constexpr int kPromotionGain = 975 - 100;

// What the move takes, and what a promotion adds; -1 for what is no capture,
// and for promotions to less than a queen.
int Taken(const Position& position, Move move) {
  if (move.is_promotion() && move.promotion() != PieceKind::kQueen) return -1;
  if (move.type() == Move::Type::kEnPassant) {
    return ExchangeValue(PieceKind::kPawn);
  }
  const Piece there = position.At(move.to());
  if (there.empty() || move.type() == Move::Type::kCastling) return -1;
  return ExchangeValue(there.kind()) +
         (move.is_promotion() ? kPromotionGain : 0);
}

// Adds what may take at least so much; Taken() tells what does.
void CapturesOf(const Position& position, int least, MoveList& moves) {
  const Side side = position.side_to_move();
  Bitboard targets = 0;
  for (const PieceKind kind : kAllKinds) {
    if (kind == PieceKind::kKing || ExchangeValue(kind) < least) continue;
    targets |= position.Pieces(Other(side), kind);
  }
  // A promotion adds to what is taken.
  const Bitboard promoting =
      position.Pieces(side, PieceKind::kPawn) & RelativeRankMask(side, 6);
  targets |= PawnAttacks(side, promoting) & position.Pieces(Other(side));
  if (position.en_passant() != kNoSquare) targets |= Bit(position.en_passant());
  if (targets != 0) LegalMovesTo(position, targets, moves);
}

struct Capture {
  Move move;
  int taken = 0;
  // The least is tried first: not taking back, taking less, with more; of
  // equals the same one for either side.
  std::tuple<bool, int, int, Square, Square> order;
};

// Few positions have more.
using Captures = absl::InlinedVector<Capture, 12>;

// The captures of at least so much, those first that mostly settle the
// question: taking back on `last`, then the most taken by the least.
Captures InOrder(const Position& position, int least, Square last) {
  const Side side = position.side_to_move();
  MoveList moves;
  CapturesOf(position, least, moves);
  Captures captures;
  for (const Move move : moves) {
    const int taken = Taken(position, move);
    if (taken < least) continue;
    const int taker = ExchangeValue(position.At(move.from()).kind());
    captures.push_back(
        {move,
         taken,
         {move.to() != last, -taken, taker, Relative(side, move.from()),
          Relative(side, move.to())}});
  }
  std::sort(
      captures.begin(), captures.end(),
      [](const Capture& a, const Capture& b) { return a.order < b.order; });
  return captures;
}

// Whether captures win at least so much, above 0, for the side to move. A
// capture of less than that cannot: the other side may stop. `last`: where the
// other side captured just now.
bool CapturesWin(const Position& position, int least, int depth,
                 Square last = kNoSquare) {
  for (const Capture& capture : InOrder(position, least, last)) {
    // The last capture that is counted has no answer.
    if (depth == 1 ||
        !CapturesWin(position.After(capture.move), capture.taken - least + 1,
                     depth - 1, capture.move.to())) {
      return true;
    }
  }
  return false;
}

// Whether captures punish the legal step: what then falls would not have fallen
// without it.
bool LosesToCaptures(const Position& own, Move step) {
  const int least = std::max(0, Taken(own, step)) + kLosingStep;
  if (!CapturesWin(own.After(step), least, kMostCaptures)) return false;
  return !own.InCheck() &&
         !CapturesWin(own.AfterPass(), kLosingStep, kMostCaptures);
}

// The capture that wins what hangs most, by exchange values.
Move CaptureOfWorst(const Position& after, Side side) {
  Square worst = kNoSquare;
  int most = 0;
  for (const Square square : Each(after.Pieces(side))) {
    const int value = ExchangeValueOf(after, square);
    if (value > most || (value == most && value > 0 &&
                         Relative(side, square) < Relative(side, worst))) {
      most = value;
      worst = square;
    }
  }
  return worst == kNoSquare ? Move() : CheapestCapture(after, worst);
}

}  // namespace

Move WinningCapture(const Position& position, int least) {
  for (const Capture& capture : InOrder(position, least, kNoSquare)) {
    if (!CapturesWin(position.After(capture.move), capture.taken - least + 1,
                     kMostCaptures - 1, capture.move.to())) {
      return capture.move;
    }
  }
  return Move();
}

Move RefutationOf(const Position& own, Move step) {
  const bool hangs = CostOf(own, step) >= kLosingStep;
  if (!hangs && !LosesToCaptures(own, step)) return Move();
  const Position after = own.After(step);
  const int least = std::max(0, Taken(own, step)) + kLosingStep;
  const Move capture = WinningCapture(after, least);
  return hangs && capture.is_null() ? CaptureOfWorst(after, own.side_to_move())
                                    : capture;
}

std::vector<Move> PreparingMoves(const Position& own, const Weights& weights,
                                 Move step, Move refutation, std::size_t most) {
  const Side side = own.side_to_move();
  const Bitboard occupied = own.Occupied();
  // What may want a guard: where the step goes, what it guarded, what falls.
  Bitboard in_need =
      Bit(step.to()) | (AttacksOf(own.At(step.from()), step.from(), occupied) &
                        own.Pieces(side));
  Bitboard lines = 0;
  if (!refutation.is_null()) {
    in_need |= Bit(refutation.to());
    lines = Between(refutation.from(), refutation.to());
  }
  const Centipawns hangs = HangsBefore(own);
  struct Rated {
    Move move;
    Centipawns score;
  };
  std::vector<Rated> rated;
  MoveList moves;
  LegalMoves(own, moves);
  for (const Move move : moves) {
    if (move.from() == step.from() || move.to() == step.to()) continue;
    if (!own.At(move.to()).empty() || move.is_promotion() ||
        move.type() == Move::Type::kEnPassant) {
      continue;
    }
    const Bitboard then =
        (occupied & ~Bit(move.from()) & ~Bit(step.from())) | Bit(move.to());
    const bool bears =
        (AttacksOf(own.At(move.from()), move.to(), then) & in_need) != 0 ||
        Contains(in_need, move.from()) || Contains(lines, move.to()) ||
        move.type() == Move::Type::kCastling;
    if (!bears) continue;
    const Position after = own.After(move);
    if (after.InCheck()) continue;
    rated.push_back({move, Sign(side) * ScoreOf(after, weights)});
  }
  std::sort(rated.begin(), rated.end(), [side](const Rated& a, const Rated& b) {
    const auto order = [side](const Rated& one) {
      return std::tuple(-one.score, Relative(side, one.move.from()),
                        Relative(side, one.move.to()));
    };
    return order(a) < order(b);
  });
  // The most natural ones alone are looked at: what is hard to find is no
  // advice.
  if (rated.size() > kMostTried) rated.resize(kMostTried);
  std::vector<Move> best;
  for (const Rated& one : rated) {
    if (best.size() == most) break;
    const Position next = own.After(one.move).AfterPass();
    if (!IsLegal(next, step) || CostOf(next, step) >= kLosingStep) continue;
    if (CostOf(own, one.move, hangs) >= kLosingStep) continue;
    if (LosesToCaptures(next, step) || LosesToCaptures(own, one.move)) continue;
    best.push_back(one.move);
  }
  return best;
}

}  // namespace assay
