// A clause a claim: most kinds of claims have one way to speak for a plan,
// whatever its kind; those that need the plan to make sense look at it.
#include "assay/explain/plan_reason.h"

#include <vector>

namespace assay {
namespace {

// More than two reasons are none.
constexpr std::size_t kMostClauses = 2;
// Squares of space that are worth a word.
constexpr int kMuchRoom = 3;
// More pieces than this are counted, not listed.
constexpr int kMostUnits = 2;

class Reasoner {
 public:
  Reasoner(const Facts& facts, const Plan& plan)
      : position_(facts.position()), plan_(plan) {}

  Message Clauses() {
    for (const Claim& claim : plan_.claims) {
      if (clauses_.size() == kMostClauses) break;
      Message clause = Clause(claim);
      if (clause.empty()) continue;
      if (HitsWhat(clause)) {
        // "it hits the pawn on d6, which is isolated".
        clause.id = "reason.hits_weak";
        clause.arguments[0] = clauses_.back().arguments[0];
        clauses_.back() = std::move(clause);
        break;
      }
      clauses_.push_back(std::move(clause));
    }
    return List("list.clauses", std::move(clauses_));
  }

 private:
  // Whether the text before has named this square as the plan's target.
  bool IsTarget(Square square) const {
    return !plan_.targets.empty() && plan_.targets[0] == square;
  }

  Message UnitOn(Square square) const {
    return Unit(position_.At(square).kind(), square);
  }

  // Whether the clause says that the one pawn just told to be hit is weak.
  bool HitsWhat(const Message& clause) const {
    if (clause.id != "reason.weak" || clauses_.empty() ||
        clauses_.back().id != "reason.hits") {
      return false;
    }
    const auto& hit = clauses_.back().arguments[0].value();
    const auto& weak = std::get<Message>(clause.arguments[0].value());
    return weak.arguments.size() == 2 &&
           weak.arguments[1].value() == Argument::Value(hit);
  }

  // "it" for the plan's target.
  Message It(Square square) const {
    return IsTarget(square) && clauses_.empty()
               ? Say("it", position_.At(square).kind())
               : UnitOn(square);
  }

  // The half-open file that the square is on; none where it is on none.
  Files HalfOpenFile(Square square) const {
    for (const Claim& claim : plan_.claims) {
      if (claim.kind == ClaimKind::kHalfOpenFile &&
          FileOf(claim.squares[0]) == FileOf(square)) {
        return Files{Bit(square)};
      }
    }
    return {};
  }

  Message Majority(const Claim& claim) const {
    return claim.side == plan_.side
               ? Say("reason.majority", claim.count, claim.other_count)
               : Say("reason.minority", claim.other_count, claim.count);
  }

  Message CentreThen(const Claim& claim) const {
    switch (claim.kind) {
      case ClaimKind::kCentreClosed:
        return Say("reason.closes_centre");
      case ClaimKind::kCentreOpen:
        return Say("reason.opens_centre");
      case ClaimKind::kCentreFixed:
        return Say("reason.fixes_centre");
      default:
        return {};
    }
  }

  Message CentreNow(const Claim& claim) const {
    const bool on_the_wing = plan_.kind == PlanKind::kKingAttack ||
                             plan_.kind == PlanKind::kExpansion ||
                             plan_.kind == PlanKind::kLever;
    if (claim.kind == ClaimKind::kCentreClosed && on_the_wing &&
        !Contains(Facts::kCentreFiles, plan_.moves.back().to())) {
      return Say("reason.centre_closed");
    }
    return {};
  }

  // An own weak pawn speaks for the break that makes it go.
  Message Weak(const Claim& claim, const Message& what) const {
    const Square pawn = claim.squares[0];
    if (claim.side == plan_.side && plan_.kind == PlanKind::kLever) {
      return Say("reason.weak_goes", what, pawn);
    }
    return Say("reason.weak", It(pawn), what, HalfOpenFile(pawn));
  }

  // A file: of a rook's plan the point, of a break what comes of it.
  Message File(const Claim& claim, bool open) const {
    if (plan_.kind == PlanKind::kFile) return Say("reason.file", open);
    if (claim.line.empty()) return {};
    return Say("reason.file_opens", open, Files{Bit(claim.squares[0])});
  }

  Message Guards(const Claim& claim) const {
    if (plan_.kind == PlanKind::kTrade) {
      return Say("reason.guards", It(plan_.targets[0]), claim.squares[0]);
    }
    if (claim.line.empty() || plan_.kind == PlanKind::kRestrain) return {};
    const Square square = claim.squares[0];
    const Piece there = position_.At(square);
    if (!there.empty() && there.side() != plan_.side) {
      return Say("reason.hits", square);
    }
    return Say("reason.covered", square, Times(claim.count),
               claim.other_count == 0 ? Say("times.nothing")
                                      : Times(claim.other_count));
  }

  // "once", "twice", "three times".
  static Message Times(int count) {
    if (count == 1) return Say("times.once");
    return count == 2 ? Say("times.twice") : Say("times", count);
  }

  Message Undeveloped(const Claim& claim) const {
    if (claim.count > kMostUnits) return Say("reason.many_home", claim.count);
    std::vector<Message> units;
    for (const Square square : claim.squares) units.push_back(UnitOn(square));
    return Say("reason.at_home", And(std::move(units)), claim.count);
  }

  Message Clause(const Claim& claim) const {
    const Square first = claim.squares.empty() ? kNoSquare : claim.squares[0];
    const Squares squares{claim.squares.ToSet()};
    const bool own = claim.side == plan_.side;
    switch (claim.kind) {
      case ClaimKind::kIsolated:
        return Weak(claim, Say("isolated"));
      case ClaimKind::kBackward:
        return Weak(claim, Say("backward"));
      case ClaimKind::kDoubled:
        return Say("reason.doubled", squares, own);
      case ClaimKind::kHangingPair:
        return Say("reason.hanging_pair", squares);
      case ClaimKind::kChainBase:
        return Say("reason.chain_base", first);
      case ClaimKind::kSiegeCount:
        return Say("reason.siege", claim.tempi, Times(claim.count),
                   claim.other_count == 0 ? Say("times.never")
                                          : Times(claim.other_count));
      case ClaimKind::kOpenFile:
        return File(claim, true);
      case ClaimKind::kHalfOpenFile:
        return File(claim, false);
      case ClaimKind::kLeverMove:
        return claim.others.empty()
                   ? Message()
                   : Say("reason.hits", Squares{claim.others.ToSet()});
      case ClaimKind::kCentreClosed:
      case ClaimKind::kCentreOpen:
      case ClaimKind::kCentreFixed:
      case ClaimKind::kCentreTension:
      case ClaimKind::kCentreMobile:
        return claim.line.empty() ? CentreNow(claim) : CentreThen(claim);
      case ClaimKind::kUndeveloped:
        return Undeveloped(claim);
      case ClaimKind::kUncastled:
        return Say("reason.uncastled", own, first);
      case ClaimKind::kKingAttackers:
        return claim.count < 2 || own
                   ? Message()
                   : Say("reason.king_attackers", claim.count);
      case ClaimKind::kFileToKing:
        return Say("reason.file_to_king", Files{squares.set});
      case ClaimKind::kDiagonalOpen:
        return Say("reason.diagonal_open");
      case ClaimKind::kMajority:
        return Majority(claim);
      case ClaimKind::kCandidate:
        return Say("reason.candidate", first);
      case ClaimKind::kBlockade:
        if (!clauses_.empty()) return Say("reason.stands_still", Message());
        return claim.others.empty()
                   ? Message()
                   : Say("reason.stands_still",
                         Unit(PieceKind::kPawn, claim.others[0]));
      case ClaimKind::kControl:
        return Guards(claim);
      case ClaimKind::kBishopPair:
        if (own) return Say("reason.two_bishops");
        return plan_.kind == PlanKind::kTrade ? Say("reason.breaks_pair")
                                              : Message();
      case ClaimKind::kBadBishop:
        return Say("reason.bad_bishop", UnitOn(first), claim.count);
      case ClaimKind::kSpace:
        return Space(claim);
      case ClaimKind::kOutpostRoute:
        return Say("reason.outpost");
      case ClaimKind::kKnightRim:
        return Say("reason.rim", first);
      case ClaimKind::kScope:
        return Scope(claim);
      case ClaimKind::kMaterial:
        return plan_.kind != PlanKind::kTrade ||
                       claim.count <= claim.other_count
                   ? Message()
                   : Say("reason.ahead", claim.side,
                         Count(claim.count - claim.other_count, claim.piece));
      default:
        return {};
    }
  }

  Message Space(const Claim& claim) const {
    if (plan_.kind == PlanKind::kLever) {
      return Say("reason.less_room", plan_.side, claim.count,
                 claim.other_count);
    }
    if (plan_.kind == PlanKind::kTrade) {
      return Say("reason.cramped", claim.count, claim.other_count);
    }
    if (claim.line.empty()) return {};
    for (const Claim& now : plan_.claims) {
      if (now.kind == ClaimKind::kSpace && now.line.empty() &&
          now.side == claim.side && now.count + kMuchRoom <= claim.count) {
        return Say("reason.space_grows", now.count, claim.count);
      }
    }
    return {};
  }

  Message Scope(const Claim& claim) const {
    if (plan_.kind != PlanKind::kRegroup || claim.count > 1 ||
        !claim.line.empty()) {
      return {};
    }
    return Say("reason.scope", claim.squares[0], claim.count);
  }

  const Position& position_;
  const Plan& plan_;
  std::vector<Message> clauses_;
};

}  // namespace

Message PlanReason(const Facts& facts, const Plan& plan) {
  return Reasoner(facts, plan).Clauses();
}

}  // namespace assay
