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
    told_.title = Title();
    told_.begins = Begins();
    for (const Claim& claim : plan_.claims) table_.Add(claim, told_.claims);
    NoteNamedSquares();
    told_.ignored_line = WithPasses(position_, plan_.side, plan_.moves);
    const Claim line = LineClaim(position_, plan_.side, told_.ignored_line);
    table_.Add(line, told_.claims);
    table_.Add(line, told_.ignored_claims);
    told_.ignored_text =
        "If " + std::string(Name(Other(plan_.side))) +
        " only waits: " + LineText(position_, told_.ignored_line) + ".";
    TellCounter();
    const std::string reason = PlanReason(facts_, plan_);
    const std::string standing = StandingText();
    told_.text = std::string(Name(plan_.side)) + Predicate() +
                 (plan_.taught == PawnStructure::kNone
                      ? ""
                      : ", a known plan in this structure") +
                 (reason.empty() ? "." : ": " + reason + ".") +
                 (standing.empty() ? "" : " " + standing + ".");
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
  std::string Kind(Square square) const {
    return Name(position_.At(square).kind());
  }

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
      step.purpose = DeedOf(at, {move}, scratch, refs);
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
      told_.steps.push_back(step);
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
    prevented_ = journey ? "the " + Kind(from) + "'s way to " +
                               ToString(other.moves.back().to())
                         : told.title;
    Merge(told.claims, told_.claims);
  }

  std::string TargetUnit() const {
    return position_.At(Target()).empty() ? ToString(Target())
                                          : UnitText(position_, Target());
  }

  std::string Title() const {
    switch (plan_.kind) {
      case PlanKind::kSiege:
        return "a siege of " + TargetUnit();
      case PlanKind::kLever:
        return "the break " + Point();
      case PlanKind::kExpansion:
        return "the advance " + Point();
      case PlanKind::kRegroup:
        return IsBlockade() ? "a blockade on " + ToString(Target())
                            : "the " + std::string(Name(MovedKind())) + " to " +
                                  ToString(Goal());
      case PlanKind::kTrade:
        return "the trade of the " + std::string(Name(MovedKind())) + " on " +
               ToString(plan_.moves.front().from()) + " for " + TargetUnit();
      case PlanKind::kMinorityAttack:
        return "the minority attack";
      case PlanKind::kMajority:
        return "the advance of the majority";
      case PlanKind::kPasser:
        return Blockades() ? "a blockade on " + ToString(Goal())
                           : "the advance of the passed pawn";
      case PlanKind::kKingAttack:
        return "an attack on the king";
      case PlanKind::kKingWalk:
        return "the king to " + ToString(Goal());
      case PlanKind::kDevelop:
        return Castles() ? "castling" : "finishing development";
      case PlanKind::kFile:
        return std::string("a rook on the ") +
               FilesText(FileMask(FileOf(Goal())));
      case PlanKind::kRestrain:
        return "holding up " + prevented_;
      case PlanKind::kReshape:
        return "changing the centre with " + Point();
    }
    return "";
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

  // " prepares the break b4 with a3", " plays the break b4".
  std::string NamedByItsPoint(const std::string& what) const {
    if (told_.steps.size() == 1) return " plays " + what + Point();
    return " prepares " + what + Point() + " with " +
           Names(told_.steps.size() - 1);
  }

  std::string Predicate() const {
    const std::string with = " with " + Names(told_.steps.size());
    const std::string from = std::string(Name(MovedKind())) + " on " +
                             ToString(plan_.moves.front().from());
    switch (plan_.kind) {
      case PlanKind::kSiege:
        return " lays siege to " + TargetUnit() + with;
      case PlanKind::kLever:
        return NamedByItsPoint("the break ");
      case PlanKind::kExpansion:
        return " gains space" + with;
      case PlanKind::kRegroup:
        if (IsBlockade()) {
          return " sets up a blockade on " + ToString(Target()) + with;
        }
        return " brings the " + from + " to " + ToString(Goal()) +
               (told_.steps.size() == 1 ? "" : with);
      case PlanKind::kTrade:
        return " offers to trade the " + from + " for " + TargetUnit() + with;
      case PlanKind::kMinorityAttack:
        return " starts the minority attack" + with;
      case PlanKind::kMajority:
        return " advances the majority" + with;
      case PlanKind::kPasser:
        return (Blockades()
                    ? " blockades the passed pawn from " + ToString(Goal())
                    : " pushes the passed pawn") +
               with;
      case PlanKind::kKingAttack:
        return " attacks the king on " +
               ToString(position_.King(Other(plan_.side))) + with;
      case PlanKind::kKingWalk:
        return " walks the king to " + ToString(Goal()) +
               (told_.steps.size() == 1 ? "" : with);
      case PlanKind::kDevelop:
        return Castles() ? " castles with " + Names(1) : " develops" + with;
      case PlanKind::kFile:
        return std::string(" brings a rook to the ") +
               FilesText(FileMask(FileOf(Goal()))) + with;
      case PlanKind::kRestrain:
        return " stops " + prevented_ + with;
      case PlanKind::kReshape:
        return " changes the centre" + with;
    }
    return "";
  }

  // What the first move does for the plan.
  std::string Begins() const {
    const bool at_once = told_.steps.size() == 1;
    const std::string piece = Name(MovedKind());
    const std::string goal = ToString(Goal());
    switch (plan_.kind) {
      case PlanKind::kSiege:
        return (at_once ? "lays siege to " : "begins the siege of ") +
               TargetUnit();
      case PlanKind::kLever:
        return at_once ? "is the break" : "prepares the break " + Point();
      case PlanKind::kExpansion:
        return at_once ? "gains space" : "begins to gain space";
      case PlanKind::kRegroup:
        return at_once ? "brings the " + piece + " to " + goal
                       : "starts the " + piece + " on its way to " + goal;
      case PlanKind::kTrade:
        return "heads for the trade of the " + piece + " on " +
               ToString(plan_.moves.front().from()) + " for " + TargetUnit();
      case PlanKind::kMinorityAttack:
        return "begins the minority attack";
      case PlanKind::kMajority:
        return "sets the majority in motion";
      case PlanKind::kPasser:
        if (Blockades()) {
          return at_once ? "blockades the passed pawn"
                         : "heads for the blockade on " + goal;
        }
        return MovedKind() == PieceKind::kPawn ? "pushes the passed pawn"
                                               : "helps the passed pawn on";
      case PlanKind::kKingAttack:
        return std::string(at_once ? "attacks" : "begins the attack on") +
               " the king on " + ToString(position_.King(Other(plan_.side)));
      case PlanKind::kKingWalk:
        return at_once ? "brings the king to " + goal
                       : "starts the king on its way to " + goal;
      case PlanKind::kDevelop:
        return told_.steps[0].purpose.empty() ? "develops"
                                              : told_.steps[0].purpose;
      case PlanKind::kFile:
        return (at_once ? "puts a rook on the " : "heads for the ") +
               FilesText(FileMask(FileOf(Goal())));
      case PlanKind::kRestrain:
        return "stops " + prevented_;
      case PlanKind::kReshape:
        return at_once ? "changes the centre" : "prepares " + Point();
    }
    return "";
  }

  // The first so many moves: "Na5, Ba6 and Rc8".
  std::string Names(std::size_t count) const {
    std::vector<std::string> names;
    for (std::size_t i = 0; i < count; ++i) {
      names.push_back(NamedMove(plan_.side, told_.steps[i].san));
    }
    return Join(names);
  }

  void TellCounter() {
    if (plan_.counter.empty()) return;
    const auto first = plan_.moves.begin();
    auto next = first + static_cast<std::ptrdiff_t>(plan_.counter_from);
    std::vector<Move> line = WithPasses(position_, plan_.side, {first, next});
    Position at = AfterLine(position_, line);
    std::string sans;
    for (const Move move : plan_.counter) {
      if (at.side_to_move() == plan_.side) {
        // The plan goes on in between.
        const bool goes_on =
            next != plan_.moves.end() && IsLegal(at, *next) && !sans.empty();
        line.push_back(goes_on ? *next++ : Move());
        at = at.AfterStep(line.back());
      }
      ToldStep step;
      step.move = move;
      step.san = ToSan(at, move);
      line.push_back(move);
      at = at.After(move);
      sans += (sans.empty() ? "" : " and ") +
              NamedMove(Other(plan_.side), step.san);
      told_.counter.push_back(step);
    }
    counter_sans_ = sans;
    counter_line_ = LineText(position_, line);
    told_.counter_text =
        std::string(Name(Other(plan_.side))) + " answers " + sans + ".";
    const Claim claim = LineClaim(position_, plan_.side, line);
    table_.Add(claim, told_.counter_claims);
    table_.Add(claim, told_.claims);
  }

  // What comes of it, in a sentence without its full stop.
  std::string StandingText() {
    const std::string other = Name(Other(plan_.side));
    switch (plan_.standing) {
      case Standing::kInTime:
        return counter_sans_.empty()
                   ? ""
                   : other + "'s best answer is " + counter_sans_;
      case Standing::kSlow:
        return other + " is faster" +
               (counter_sans_.empty() ? "" : " with " + counter_sans_);
      case Standing::kStopped:
        if (plan_.gain <= 0) return "By itself it brings nothing";
        return other + (counter_sans_.empty()
                            ? " can stop it"
                            : " stops it with " + counter_sans_);
      case Standing::kNeeds: {
        const Position own = position_.side_to_move() == plan_.side
                                 ? position_
                                 : position_.AfterPass();
        told_.needs =
            NamedMove(plan_.side, ToSan(own, plan_.needed)) + " first";
        table_.Add(LineClaim(position_, plan_.side,
                             WithPasses(position_, plan_.side, {plan_.needed})),
                   told_.claims);
        return "It needs " + told_.needs +
               (counter_sans_.empty() ? ""
                                      : "; at once it fails: " + counter_line_);
      }
    }
    return "";
  }

  const Facts& facts_;
  const Position& position_;
  const Plan& plan_;
  ClaimTable& table_;
  ToldPlan told_;
  std::string counter_sans_;
  std::string prevented_;
  std::string counter_line_;
};

}  // namespace

ToldPlan TellPlan(const Facts& facts, const Plan& plan, ClaimTable& table) {
  return Teller(facts, plan, table).Tell();
}

}  // namespace assay
