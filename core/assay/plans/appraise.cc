#include "assay/plans/appraise.h"

#include <algorithm>

#include "assay/facts/exchange.h"
#include "assay/facts/routes.h"
#include "assay/plans/stops.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

// A plan that keeps less than this share of its gain is stopped; an answer
// that costs its owner more than half of the gain is no stop, since the plan
// has got that much. Own reasoning.
constexpr int kKeptPercent = 40;
constexpr int kPricePercent = 50;

// The capture that the other side begins with on a square; null for none.
Move CheapestCapture(const Position& position, Square square) {
  MoveList moves;
  LegalMoves(position, moves);
  Move best;
  int least = 0;
  for (const Move move : moves) {
    if (move.to() != square) continue;
    const PieceKind kind = position.At(move.from()).kind();
    const int value = kind == PieceKind::kKing ? 10000 : ExchangeValue(kind);
    if (best.is_null() || value < least) {
      best = move;
      least = value;
    }
  }
  return best;
}

// The capture that makes the losing step lose.
Move Refutation(const Position& after, Side side) {
  Square worst = kNoSquare;
  int most = 0;
  for (const Square square : Each(after.Pieces(side))) {
    const int value = ExchangeValueOf(after, square);
    if (value > most) {
      most = value;
      worst = square;
    }
  }
  return worst == kNoSquare ? Move() : CheapestCapture(after, worst);
}

// An own move that guards where the first step goes and makes it safe.
Move PreparingMove(const Position& own, Side side, Move first) {
  MoveList moves;
  LegalMoves(own, moves);
  const Centipawns hangs = HangsBefore(own);
  for (const Move move : moves) {
    if (move.from() == first.from() || move.to() == first.to()) continue;
    const Piece piece = own.At(move.from());
    const Bitboard occupied =
        (own.Occupied() & ~Bit(move.from()) & ~Bit(first.from())) |
        Bit(move.to());
    const Bitboard seen = piece.kind() == PieceKind::kPawn
                              ? PawnAttacks(side, move.to())
                              : PieceAttacks(piece.kind(), move.to(), occupied);
    if (!Contains(seen, first.to())) continue;
    if (CostOf(own, move, hangs) >= kLosingStep) continue;
    const Position after = own.After(move);
    if (after.InCheck()) continue;
    const Position next = after.AfterPass();
    if (IsLegal(next, first) && CostOf(next, first) < kLosingStep) return move;
  }
  return Move();
}

// Whether the piece of a one-piece plan still gets to its last square after
// the answer, one move longer at most.
bool HasSecondWay(const Position& after, Side side,
                  const std::vector<Move>& rest) {
  if (rest.empty()) return false;
  for (std::size_t i = 1; i < rest.size(); ++i) {
    if (rest[i].from() != rest[i - 1].to()) return false;
  }
  const Square from = rest.front().from();
  const Piece piece = after.At(from);
  if (piece.empty() || piece.side() != side ||
      piece.kind() == PieceKind::kPawn) {
    return false;
  }
  const Facts facts(after);
  const int most = std::min(static_cast<int>(rest.size()) + 1, kLongestRoute);
  const Square goal = rest.back().to();
  if (Reach(facts, from, most).MovesTo(goal) < 0) return false;
  // The goal itself must not be held against it.
  return PopCount(after.Attackers(side, goal, after.Occupied())) >=
         PopCount(after.Attackers(Other(side), goal, after.Occupied()));
}

class Answers {
 public:
  Answers(const Outlook& outlook, const Draft& draft, Plan& plan)
      : outlook_(outlook), draft_(draft), plan_(plan) {}

  // The opponent to move here, the rest of the moves still to come.
  void Find(const Position& here, const std::vector<Move>& rest,
            Centipawns got) {
    const Bitboard targets = draft_.targets.ToSet();
    // The same turn as after an answer, so that no tempo is counted.
    const Centipawns now = Score(here.InCheck() ? here : here.AfterPass());
    const Centipawns hangs = HangsBefore(here);
    undisturbed_ = LossesOf(here, outlook_.side, rest);
    Centipawns best = 0;
    Move stop;
    for (const Move answer : AnswersTo(here, rest, targets)) {
      const Position after = here.After(answer);
      const Centipawns then = Score(after);
      // The cheapest is looked for: one that costs more need not be tried.
      if (!stop.is_null() && then >= best) continue;
      if (!Stopped(after, rest, got, then)) continue;
      if (CostOf(here, answer, hangs) >= kLosingStep) continue;
      best = then;
      stop = answer;
    }
    if (stop.is_null()) return;
    plan_.counter = {stop};
    const bool cheap = (best - now) * 100 <= plan_.gain * kPricePercent;
    if (draft_.moves.size() >= 2 && cheap &&
        !HasSecondWay(here.After(stop), outlook_.side, rest)) {
      plan_.standing = Standing::kStopped;
    }
  }

 private:
  Centipawns Score(const Position& position) const {
    return Sign(outlook_.side) * ScoreOf(position, outlook_.weights);
  }

  bool Stopped(const Position& after, const std::vector<Move>& rest,
               Centipawns got, Centipawns then) const {
    if (FailsAt(after, outlook_.side, rest, undisturbed_) != kNoSquare)
      return true;
    std::optional<Position> end = PlayAlone(after, outlook_.side, rest);
    if (!end.has_value()) return false;
    // The same turn before and after, so that no tempo is counted.
    if (end->side_to_move() != after.side_to_move()) {
      if (end->InCheck()) return false;
      end = end->AfterPass();
    }
    const Centipawns gain = got + Score(*end) - then + draft_.promise;
    return gain * 100 < plan_.gain * kKeptPercent;
  }

  const Outlook& outlook_;
  const Draft& draft_;
  Plan& plan_;
  std::vector<Centipawns> undisturbed_;  // losses of the rest, unanswered
};

// Marks a plan whose first step loses material; false where it does not.
bool FirstStepLoses(const Position& own, Plan& plan) {
  const Move first = plan.moves.front();
  if (CostOf(own, first) < kLosingStep) return false;
  plan.needed = PreparingMove(own, plan.side, first);
  plan.standing = plan.needed.is_null() ? Standing::kStopped : Standing::kNeeds;
  const Move capture = Refutation(own.After(first), plan.side);
  if (!capture.is_null()) plan.counter = {capture};
  return true;
}

}  // namespace

Centipawns Discounted(Centipawns gain, int tempi) {
  for (int i = 0; i < tempi; ++i) gain = ScaleRounded(gain, 9, 10);
  return gain;
}

Plan Appraise(const Outlook& outlook, const Draft& draft) {
  Plan plan;
  plan.side = outlook.side;
  plan.kind = draft.kind;
  plan.moves = draft.moves;
  plan.targets = draft.targets;
  plan.claims = draft.claims;
  plan.taught = draft.taught;
  plan.gain = GainAlone(outlook, draft.moves).value_or(0) + draft.promise;
  plan.worth = Discounted(plan.gain, plan.tempi());
  const auto own = WithTurn(outlook.position, outlook.side);
  if (!own.has_value() || plan.moves.empty()) return plan;
  if (!IsLegal(*own, plan.moves.front())) {
    plan.standing = Standing::kStopped;
    return plan;
  }
  if (FirstStepLoses(*own, plan) || plan.gain <= 0) return plan;
  Answers answers(outlook, draft, plan);
  if (outlook.position.side_to_move() != outlook.side) {
    answers.Find(outlook.position, plan.moves, 0);
    return plan;
  }
  if (plan.tempi() < 2) return plan;
  const Position after = own->After(plan.moves.front());
  if (after.InCheck()) return plan;
  const std::vector<Move> rest(plan.moves.begin() + 1, plan.moves.end());
  const Centipawns got = GainAlone(outlook, {plan.moves.front()}).value_or(0);
  answers.Find(after, rest, got);
  return plan;
}

}  // namespace assay
