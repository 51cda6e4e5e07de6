// Title by kind, text as title, moves and standing; each step with what it
// does, each counter with where it comes in.
#include "assay/explain/plan_text.h"

#include "assay/explain/deed.h"
#include "assay/explain/line_text.h"
#include "assay/explain/plan_reason.h"
#include "assay/explain/words.h"
#include "assay/facts/claim_makers.h"
#include "assay/notation/san.h"
#include "assay/plans/draft.h"
#include "assay/rules/movegen.h"
#include "assay/terms/ledger.h"

namespace assay {
namespace {

class Teller {
 public:
  Teller(const Facts& facts, const Plan& plan, ClaimTable& table)
      : facts_(facts),
        position_(facts.position()),
        plan_(plan),
        table_(table) {}

  ToldPlan Tell() {
    told_.plan = plan_;
    TellSteps();
    TellPrevented();
    told_.title_said = Title();
    told_.begins = Begins();
    for (const Claim& claim : plan_.claims) table_.Add(claim, told_.claims);
    NoteNamedSquares();
    told_.ignored_line = WithPasses(position_, plan_.side, plan_.moves);
    const Claim line = LineClaim(position_, plan_.side, told_.ignored_line);
    table_.Add(line, told_.claims);
    table_.Add(line, told_.ignored_claims);
    told_.ignored_said = Sentence(Say("plan.waits", Other(plan_.side),
                                      LineText(position_, told_.ignored_line)));
    TellCounter();
    const Message clause =
        Say("plan", plan_.side, Predicate(),
            plan_.taught != PawnStructure::kNone, PlanReason(facts_, plan_));
    const Message standing = StandingClause();
    told_.said = Sentence(
        standing.empty() ? clause : Say("plan.standing", clause, standing));
    return std::move(told_);
  }

 private:
  Square Target() const {
    return plan_.targets.empty() ? plan_.moves.back().to() : plan_.targets[0];
  }
  Square Goal() const { return plan_.moves.back().to(); }
  PieceKind MovedKind() const {
    return position_.At(plan_.moves.front().from()).kind();
  }
  PieceKind Kind(Square square) const { return position_.At(square).kind(); }

  void TellSteps() {
    Position at = position_;
    for (std::size_t i = 0; i < plan_.moves.size(); ++i) {
      const Move move = plan_.moves[i];
      if (at.side_to_move() != plan_.side) at = at.AfterPass();
      ToldStep step;
      step.move = move;
      step.san = ToSan(at, move);
      ClaimTable scratch;
      ClaimRefs refs;
      step.purpose_said = DeedOf(at, {move}, scratch, refs);
      const std::vector<Move> before =
          WithPasses(position_, plan_.side,
                     {plan_.moves.begin(),
                      plan_.moves.begin() + static_cast<std::ptrdiff_t>(i)});
      std::vector<Move> prefix = before;
      if (!prefix.empty() || position_.side_to_move() != plan_.side) {
        prefix.emplace_back();
      }
      for (Claim claim : scratch.claims()) {
        // A line's count is from its own start: the material at the prefix.
        if (claim.kind == ClaimKind::kLine) continue;
        claim.line.insert(claim.line.begin(), prefix.begin(), prefix.end());
        table_.Add(claim, step.claims);
      }
      std::vector<Move> upto = prefix;
      upto.push_back(move);
      table_.Add(LineClaim(position_, plan_.side, upto), step.claims);
      told_.steps.push_back(std::move(step));
      at = at.After(move);
    }
    NoteRoutes();
  }

  // What the text names besides the moves: the target, and the king attacked.
  void NoteNamedSquares() {
    const Square target = Target();
    const Piece there = position_.At(target);
    table_.Add(there.empty()
                   ? ControlClaim(facts_, plan_.side, target)
                   : MaterialClaim(facts_, there.side(), there.kind()),
               told_.claims);
    if (plan_.kind == PlanKind::kKingAttack) {
      table_.Add(MaterialClaim(facts_, Other(plan_.side), PieceKind::kKing),
                 told_.claims);
    }
  }

  // Consecutive moves of one piece are one route.
  void NoteRoutes() {
    for (std::size_t i = 0; i < plan_.moves.size(); ++i) {
      SquareList route{plan_.moves[i].from(), plan_.moves[i].to()};
      std::size_t first = i;
      while (first > 0 &&
             plan_.moves[first - 1].to() == plan_.moves[first].from()) {
        --first;
      }
      std::size_t last = i;
      while (last + 1 < plan_.moves.size() &&
             plan_.moves[last].to() == plan_.moves[last + 1].from()) {
        ++last;
      }
      if (first == last) continue;
      route = {plan_.moves[first].from()};
      for (std::size_t k = first; k <= last; ++k)
        route.Add(plan_.moves[k].to());
      told_.steps[i].route = route;
    }
  }

  // The other side's plan that a restraint takes away: "the break ...b5".
  void TellPrevented() {
    if (plan_.prevented.moves.empty()) return;
    Plan other;
    other.side = Other(plan_.side);
    other.kind = plan_.prevented.kind;
    other.moves = plan_.prevented.moves;
    other.targets = plan_.prevented.targets;
    const ToldPlan told = Teller(facts_, other, table_).Tell();
    const bool journey =
        other.kind == PlanKind::kRegroup || other.kind == PlanKind::kKingWalk;
    const Square from = other.moves.front().from();
    prevented_ = journey ? Say("plan.way", Kind(from), other.moves.back().to())
                         : told.title_said;
    Merge(told.claims, told_.claims);
  }

  Message TargetUnit() const {
    const Square target = Target();
    return position_.At(target).empty() ? Say("square", target)
                                        : Unit(Kind(target), target);
  }

  Files GoalFile() const { return Files{Bit(Goal())}; }

  Message Title() const {
    const Square from = plan_.moves.front().from();
    switch (plan_.kind) {
      case PlanKind::kSiege:
        return Say("plan.siege", TargetUnit());
      case PlanKind::kLever:
        return Say("plan.lever", Point());
      case PlanKind::kExpansion:
        return Say("plan.expansion", Point());
      case PlanKind::kRegroup:
        return IsBlockade() ? Say("plan.blockade", Target())
                            : Say("plan.regroup", MovedKind(), Goal());
      case PlanKind::kTrade:
        return Say("plan.trade", Unit(MovedKind(), from), TargetUnit());
      case PlanKind::kMinorityAttack:
        return Say("plan.minority_attack");
      case PlanKind::kMajority:
        return Say("plan.majority");
      case PlanKind::kPasser:
        return Blockades() ? Say("plan.blockade", Goal()) : Say("plan.passer");
      case PlanKind::kKingAttack:
        return Say("plan.king_attack");
      case PlanKind::kKingWalk:
        return Say("plan.regroup", PieceKind::kKing, Goal());
      case PlanKind::kDevelop:
        return Say(Castles() ? "plan.castling" : "plan.develop");
      case PlanKind::kFile:
        return Say("plan.file", GoalFile());
      case PlanKind::kRestrain:
        return Say("plan.restrain", prevented_);
      case PlanKind::kReshape:
        return Say("plan.reshape", Point());
    }
    return {};
  }

  // A passed pawn that pieces alone deal with is the enemy's.
  bool Blockades() const {
    Position at = position_;
    for (const Move move : plan_.moves) {
      if (at.side_to_move() != plan_.side) at = at.AfterPass();
      if (at.At(move.from()).kind() == PieceKind::kPawn) return false;
      at = at.After(move);
    }
    return true;
  }

  // A regroup that also aims at the pawn behind its goal.
  bool IsBlockade() const {
    return plan_.kind == PlanKind::kRegroup && plan_.targets.size() > 1;
  }

  bool Castles() const {
    return plan_.moves.size() == 1 &&
           plan_.moves.front().type() == Move::Type::kCastling;
  }

  // The last move, which is the plan's point, for kinds that are named by it.
  std::string Point() const {
    return NamedMove(plan_.side, told_.steps.back().san);
  }

  // What the side does, with what moves: "prepares the break b4 with a3".
  Message Predicate() const {
    const std::size_t count = told_.steps.size();
    const bool at_once = count == 1;
    const Message with = Names(count);
    const Message moved = Unit(MovedKind(), plan_.moves.front().from());
    switch (plan_.kind) {
      case PlanKind::kSiege:
        return Say("plan.sieges", TargetUnit(), with);
      case PlanKind::kLever:
        return Say("plan.breaks", Point(), Names(count - 1));
      case PlanKind::kExpansion:
        return Say("plan.expands", with);
      case PlanKind::kRegroup:
        if (IsBlockade()) return Say("plan.blockades", Target(), with);
        return Say("plan.regroups", moved, Goal(), at_once ? Message() : with);
      case PlanKind::kTrade:
        return Say("plan.trades", moved, TargetUnit(), with);
      case PlanKind::kMinorityAttack:
        return Say("plan.starts_minority_attack", with);
      case PlanKind::kMajority:
        return Say("plan.advances_majority", with);
      case PlanKind::kPasser:
        return Blockades() ? Say("plan.blockades_passer", Goal(), with)
                           : Say("plan.pushes_passer", with);
      case PlanKind::kKingAttack:
        return Say("plan.attacks_king", position_.King(Other(plan_.side)),
                   with);
      case PlanKind::kKingWalk:
        return Say("plan.walks_king", Goal(), at_once ? Message() : with);
      case PlanKind::kDevelop:
        return Say(Castles() ? "plan.castles" : "plan.develops", with);
      case PlanKind::kFile:
        return Say("plan.takes_file", GoalFile(), with);
      case PlanKind::kRestrain:
        return Say("plan.restrains", prevented_, with);
      case PlanKind::kReshape:
        return Say("plan.reshapes", with);
    }
    return {};
  }

  // What the first move does for the plan.
  Message Begins() const {
    const bool at_once = told_.steps.size() == 1;
    switch (plan_.kind) {
      case PlanKind::kSiege:
        return Say("begins.siege", at_once, TargetUnit());
      case PlanKind::kLever:
        return Say("begins.lever", at_once, Point());
      case PlanKind::kExpansion:
        return Say("begins.expansion", at_once);
      case PlanKind::kRegroup:
        return Say("begins.regroup", at_once, MovedKind(), Goal());
      case PlanKind::kTrade:
        return Say("begins.trade",
                   Unit(MovedKind(), plan_.moves.front().from()), TargetUnit());
      case PlanKind::kMinorityAttack:
        return Say("begins.minority_attack");
      case PlanKind::kMajority:
        return Say("begins.majority");
      case PlanKind::kPasser:
        if (Blockades()) return Say("begins.blockade", at_once, Goal());
        return Say("begins.passer", MovedKind() == PieceKind::kPawn);
      case PlanKind::kKingAttack:
        return Say("begins.king_attack", at_once,
                   position_.King(Other(plan_.side)));
      case PlanKind::kKingWalk:
        return Say("begins.regroup", at_once, PieceKind::kKing, Goal());
      case PlanKind::kDevelop: {
        const Message& purpose = told_.steps[0].purpose_said;
        return purpose.empty() ? Say("begins.develop") : purpose;
      }
      case PlanKind::kFile:
        return Say("begins.file", at_once, GoalFile());
      case PlanKind::kRestrain:
        return Say("begins.restrain", prevented_);
      case PlanKind::kReshape:
        return Say("begins.reshape", at_once, Point());
    }
    return {};
  }

  // The first so many moves: "Na5, Ba6 and Rc8".
  Message Names(std::size_t count) const {
    std::vector<Message> names;
    for (std::size_t i = 0; i < count; ++i) {
      names.push_back(Moves(NamedMove(plan_.side, told_.steps[i].san)));
    }
    return And(std::move(names));
  }

  void TellCounter() {
    if (plan_.counter.empty()) return;
    const auto first = plan_.moves.begin();
    auto next = first + static_cast<std::ptrdiff_t>(plan_.counter_from);
    std::vector<Move> line = WithPasses(position_, plan_.side, {first, next});
    Position at = AfterLine(position_, line);
    std::vector<Message> answers;
    for (const Move move : plan_.counter) {
      if (at.side_to_move() == plan_.side) {
        // The plan goes on in between.
        const bool goes_on =
            next != plan_.moves.end() && IsLegal(at, *next) && !answers.empty();
        line.push_back(goes_on ? *next++ : Move());
        at = at.AfterStep(line.back());
      }
      ToldStep step;
      step.move = move;
      step.san = ToSan(at, move);
      line.push_back(move);
      at = at.After(move);
      answers.push_back(Moves(NamedMove(Other(plan_.side), step.san)));
      told_.counter.push_back(step);
    }
    answers_ = List("list.each", std::move(answers));
    counter_line_ = LineText(position_, line);
    told_.counter_said =
        Sentence(Say("plan.answers", Other(plan_.side), answers_));
    const Claim claim = LineClaim(position_, plan_.side, line);
    table_.Add(claim, told_.counter_claims);
    table_.Add(claim, told_.claims);
  }

  // What comes of it, in a sentence without its full stop.
  Message StandingClause() {
    const Side other = Other(plan_.side);
    switch (plan_.standing) {
      case Standing::kInTime:
        return answers_.empty() ? Message()
                                : Say("standing.in_time", other, answers_);
      case Standing::kSlow:
        return Say("standing.slow", other, answers_);
      case Standing::kStopped:
        return plan_.gain <= 0 ? Say("standing.nothing")
                               : Say("standing.stopped", other, answers_);
      case Standing::kNeeds: {
        const Position own = position_.side_to_move() == plan_.side
                                 ? position_
                                 : position_.AfterPass();
        told_.needs_said =
            Say("plan.needs", NamedMove(plan_.side, ToSan(own, plan_.needed)));
        table_.Add(LineClaim(position_, plan_.side,
                             WithPasses(position_, plan_.side, {plan_.needed})),
                   told_.claims);
        return Say("standing.needs", told_.needs_said, counter_line_);
      }
    }
    return {};
  }

  const Facts& facts_;
  const Position& position_;
  const Plan& plan_;
  ClaimTable& table_;
  ToldPlan told_;
  Message answers_;
  Message prevented_;
  std::string counter_line_;
};

}  // namespace

Centipawns LedgerGain(const Position& position, Side side,
                      const std::vector<Move>& line, const Weights& weights) {
  const std::optional<Position> end =
      WithTurn(AfterLine(position, line), position.side_to_move());
  if (!end.has_value()) return 0;
  return Sign(side) * (ScoreOf(*end, weights) - ScoreOf(position, weights));
}

ToldPlan TellPlan(const Facts& facts, const Plan& plan, const Weights& weights,
                  ClaimTable& table) {
  ToldPlan told = Teller(facts, plan, table).Tell();
  told.ignored_gain =
      LedgerGain(facts.position(), plan.side, told.ignored_line, weights);
  return told;
}

}  // namespace assay
