#include "assay/plans/appraise.h"

#include <algorithm>

#include "assay/facts/exchange.h"
#include "assay/plans/first_step.h"
#include "assay/plans/long_stops.h"
#include "assay/plans/pawn_play.h"
#include "assay/plans/stops.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

// A plan that keeps less than this share of its gain is stopped. Own reasoning.
constexpr int kKeptPercent = 40;

// A blockade that a passed pawn does not wait for comes too late.
bool IsOvertaken(const Position& here, const Plan& plan, Move stop) {
  return plan.kind == PlanKind::kPasser &&
         here.At(stop.from()).kind() == PieceKind::kPawn &&
         FileOf(stop.from()) == FileOf(plan.moves.back().to()) &&
         stop.to() == plan.moves.back().to();
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
    const Centipawns now =
        outlook_.Score(here.InCheck() ? here : here.AfterPass());
    const Centipawns hangs = HangsBefore(here);
    undisturbed_ = LossesOf(here, outlook_.side, rest);
    Centipawns best = 0;
    Move stop;
    for (const Move answer : AnswersTo(here, rest, targets)) {
      if (here.At(answer.to()).empty() && !YieldsToQuietMoves(plan_.kind)) {
        continue;
      }
      const Position after = here.After(answer);
      // Dear questions last: what the answer costs, then the ledger's.
      if (CostOf(here, answer, hangs) >= kLosingStep) continue;
      const Centipawns then = outlook_.Score(after);
      if (IsOvertaken(here, plan_, answer) && Stopped(after, rest, got, then)) {
        plan_.counter = {answer};
        plan_.counter_from = plan_.moves.size() - rest.size();
        plan_.standing = Standing::kSlow;
        return;
      }
      // The cheapest is looked for: one that costs more need not be tried.
      if (!stop.is_null() && then >= best) continue;
      if (!Stopped(after, rest, got, then)) continue;
      best = then;
      stop = answer;
    }
    if (stop.is_null()) return;
    plan_.counter = {stop};
    plan_.counter_from = plan_.moves.size() - rest.size();
    const bool cheap = (best - now) * 100 <= plan_.gain * kPricePercent;
    if (draft_.moves.size() >= 2 && cheap &&
        !HasSecondWay(here.After(stop), outlook_.side, rest)) {
      plan_.standing =
          IsOvertaken(here, plan_, stop) ? Standing::kSlow : Standing::kStopped;
    }
  }

 private:
  bool Stopped(const Position& after, const std::vector<Move>& rest,
               Centipawns got, Centipawns then) const {
    const Square where = FailsAt(after, outlook_.side, rest, undisturbed_);
    if (where != kNoSquare) return !PawnComesUp(after, rest, where);
    std::optional<Position> end = PlayAlone(after, outlook_.side, rest);
    if (!end.has_value()) return false;
    // The same turn before and after, so that no tempo is counted.
    if (end->side_to_move() != after.side_to_move()) {
      if (end->InCheck()) return false;
      end = end->AfterPass();
    }
    const Centipawns gain = got + outlook_.Score(*end) - then + draft_.promise;
    return gain * 100 < plan_.gain * kKeptPercent;
  }

  // Whether a neighbour can step up to guard the square where the pawn was
  // stopped, so that it goes there one move later: a2-a4 against ...a7-a6,
  // which has only put off b4-b5.
  bool PawnComesUp(const Position& after, const std::vector<Move>& rest,
                   Square where) const {
    const Side side = outlook_.side;
    if (rest.size() != 1 || rest[0].to() != where ||
        after.At(rest[0].from()).kind() != PieceKind::kPawn) {
      return false;
    }
    const auto own = WithTurn(after, side);
    if (!own.has_value()) return false;
    MoveList moves;
    LegalMoves(*own, moves);
    for (const Move move : moves) {
      if (own->At(move.from()).kind() != PieceKind::kPawn ||
          !own->At(move.to()).empty() ||
          !Contains(PawnAttacks(side, move.to()), where)) {
        continue;
      }
      const Position then = own->After(move);
      if (ExchangeValueOf(then, move.to()) == 0 &&
          FailsAt(then, side, rest, undisturbed_) == kNoSquare) {
        return true;
      }
    }
    return false;
  }

  const Outlook& outlook_;
  const Draft& draft_;
  Plan& plan_;
  std::vector<Centipawns> undisturbed_;  // losses of the rest, unanswered
};

void MarkFirstStep(Move capture, Plan& plan) {
  plan.first_step_loses = true;
  plan.standing = Standing::kStopped;
  if (!capture.is_null()) plan.counter = {capture};
  plan.counter_from = 1;
}

// Marks a plan that walks a piece to where it is taken: only a pawn may be
// meant to be.
bool LaterStepLoses(const Outlook& outlook, Plan& plan) {
  const std::vector<Centipawns> losses =
      LossesOf(outlook.position, plan.side, plan.moves);
  for (std::size_t i = 1; i < losses.size(); ++i) {
    if (losses[i] < kLosingStep) continue;
    const auto after =
        PlayAlone(outlook.position, plan.side,
                  {plan.moves.begin(),
                   plan.moves.begin() + static_cast<std::ptrdiff_t>(i) + 1});
    if (!after.has_value()) return false;
    const Square goal = plan.moves[i].to();
    if (after->At(goal).kind() == PieceKind::kPawn) continue;
    const Move capture = CheapestCapture(*after, goal);
    if (capture.is_null()) continue;
    plan.standing = Standing::kStopped;
    plan.counter = {capture};
    plan.counter_from = i + 1;
    return true;
  }
  return false;
}

}  // namespace

Centipawns Discounted(Centipawns gain, int tempi) {
  for (int i = 0; i < tempi; ++i) gain = ScaleRounded(gain, 9, 10);
  return gain;
}

Plan Appraise(const Outlook& outlook, const Draft& draft) {
  Plan plan = AppraiseRoughly(outlook, draft);
  CompleteAppraisal(outlook, plan);
  return plan;
}

void CompleteAppraisal(const Outlook& outlook, Plan& plan) {
  const auto own = WithTurn(outlook.position, outlook.side);
  if (!own.has_value() || plan.moves.empty()) return;
  const Move first = plan.moves.front();
  if (!IsLegal(*own, first)) return;
  if (!plan.first_step_loses && plan.standing != Standing::kStopped) {
    const Move capture = RefutationOf(*own, first);
    if (!capture.is_null()) MarkFirstStep(capture, plan);
  }
  if (plan.first_step_loses && plan.gain > 0) {
    const std::vector<Move> before =
        PreparingMoves(*own, outlook.weights, first, plan.counter.front(), 1);
    if (before.empty()) return;
    plan.standing = Standing::kNeeds;
    plan.needed = before.front();
    return;
  }
  FindLongStop(outlook, plan);
}

Plan AppraiseRoughly(const Outlook& outlook, const Draft& draft) {
  Plan plan;
  plan.side = outlook.side;
  plan.kind = draft.kind;
  plan.moves = draft.moves;
  plan.targets = draft.targets;
  plan.claims = draft.claims;
  plan.taught = draft.taught;
  plan.prevented = draft.prevented;
  plan.gain = GainAlone(outlook, draft.moves).value_or(0) + draft.promise;
  plan.worth = Discounted(plan.gain, plan.tempi());
  const auto own = WithTurn(outlook.position, outlook.side);
  if (!own.has_value() || plan.moves.empty()) return plan;
  if (!IsLegal(*own, plan.moves.front())) {
    plan.standing = Standing::kStopped;
    return plan;
  }
  if (CostOf(*own, plan.moves.front()) >= kLosingStep) {
    MarkFirstStep(RefutationOf(*own, plan.moves.front()), plan);
    return plan;
  }
  if (plan.gain <= 0) {
    // What brings nothing if nobody answers is not in time for anything.
    plan.standing = Standing::kStopped;
    return plan;
  }
  if (LaterStepLoses(outlook, plan)) return plan;
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
