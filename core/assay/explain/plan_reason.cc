// A clause a claim: most kinds of claims have one way to speak for a plan,
// whatever its kind; those that need the plan to make sense look at it.
#include "assay/explain/plan_reason.h"

#include <vector>

#include "assay/explain/words.h"

namespace assay {
namespace {

// More than two reasons are none.
constexpr std::size_t kMostClauses = 2;
// Squares of space that are worth a word.
constexpr int kMuchRoom = 3;
// More pieces than this are counted, not listed.
constexpr int kMostUnits = 2;

// "once", "twice", "three times".
std::string TimesText(int count) {
  if (count == 1) return "once";
  return count == 2 ? "twice" : NumberText(count) + " times";
}

class Reasoner {
 public:
  Reasoner(const Facts& facts, const Plan& plan)
      : position_(facts.position()), plan_(plan) {}

  std::string Text() {
    for (const Claim& claim : plan_.claims) {
      if (clauses_.size() == kMostClauses) break;
      const std::string clause = Clause(claim);
      if (!clause.empty()) clauses_.push_back(clause);
    }
    if (clauses_.empty()) return "";
    return clauses_.size() == 1 ? clauses_[0]
                                : clauses_[0] + ", and " + clauses_[1];
  }

 private:
  // Whether the text before has named this square as the plan's target.
  bool IsTarget(Square square) const {
    return !plan_.targets.empty() && plan_.targets[0] == square;
  }

  std::string Unit(Square square) const {
    const Piece piece = position_.At(square);
    return std::string("the ") + Name(piece.kind()) + " on " + ToString(square);
  }

  // "it" for the plan's target.
  std::string It(Square square) const {
    return IsTarget(square) && clauses_.empty() ? "it" : Unit(square);
  }

  std::string OnHalfOpenFile(Square square) const {
    for (const Claim& claim : plan_.claims) {
      if (claim.kind == ClaimKind::kHalfOpenFile &&
          FileOf(claim.squares[0]) == FileOf(square)) {
        return " on the half-open " + FilesText(FileMask(FileOf(square)));
      }
    }
    return "";
  }

  std::string SiegeCount(const Claim& claim) const {
    return "within " + MovesText(claim.tempi) + " it can be attacked " +
           TimesText(claim.count) + " and defended " +
           (claim.other_count == 0 ? "not at all"
                                   : TimesText(claim.other_count));
  }

  std::string Majority(const Claim& claim) const {
    const std::string counts =
        NumberText(claim.count) + " against " + NumberText(claim.other_count);
    if (claim.side == plan_.side) return "it is " + counts + " on that wing";
    return "fewer pawns go against more, " + NumberText(claim.other_count) +
           " against " + NumberText(claim.count) + ", to leave a weak one";
  }

  std::string CentreThen(const Claim& claim) const {
    switch (claim.kind) {
      case ClaimKind::kCentreClosed:
        return "that closes the centre";
      case ClaimKind::kCentreOpen:
        return "that opens the centre";
      case ClaimKind::kCentreFixed:
        return "that fixes the centre pawns";
      default:
        return "";
    }
  }

  std::string CentreNow(const Claim& claim) const {
    const bool on_the_wing = plan_.kind == PlanKind::kKingAttack ||
                             plan_.kind == PlanKind::kExpansion ||
                             plan_.kind == PlanKind::kLever;
    if (claim.kind == ClaimKind::kCentreClosed && on_the_wing &&
        !Contains(Facts::kCentreFiles, plan_.moves.back().to())) {
      return "with the centre closed, play goes to the wings";
    }
    return "";
  }

  std::string LeverMove(const Claim& claim) const {
    if (claim.others.empty()) return "";
    return std::string("it hits the ") +
           (claim.others.size() == 1 ? "pawn on " : "pawns on ") +
           SquaresText(claim.others.ToSet());
  }

  // An own weak pawn speaks for the break that makes it go.
  std::string Weak(const Claim& claim, const std::string& what) const {
    const Square pawn = claim.squares[0];
    if (claim.side == plan_.side && plan_.kind == PlanKind::kLever) {
      return "the " + what + " pawn on " + ToString(pawn) + " goes with it";
    }
    return It(pawn) + " is " + what + OnHalfOpenFile(pawn);
  }

  // A file: of a rook's plan the point, of a break what comes of it.
  std::string File(const Claim& claim, const std::string& how) const {
    if (plan_.kind == PlanKind::kFile) return "it is " + how;
    if (claim.line.empty()) return "";
    return "the " + FilesText(FileMask(FileOf(claim.squares[0]))) +
           " can become " + how;
  }

  std::string Guards(const Claim& claim) const {
    if (plan_.kind == PlanKind::kTrade) {
      return It(plan_.targets[0]) + " guards " + ToString(claim.squares[0]);
    }
    if (claim.line.empty() || plan_.kind == PlanKind::kRestrain) return "";
    return ToString(claim.squares[0]) + " is then covered " +
           TimesText(claim.count) + " against " +
           (claim.other_count == 0 ? "nothing" : TimesText(claim.other_count));
  }

  std::string Clause(const Claim& claim) const {
    const Square first = claim.squares.empty() ? kNoSquare : claim.squares[0];
    switch (claim.kind) {
      case ClaimKind::kIsolated:
        return Weak(claim, "isolated");
      case ClaimKind::kBackward:
        return Weak(claim, "backward");
      case ClaimKind::kDoubled:
        return "the pawns on " + SquaresText(claim.squares.ToSet()) +
               " are doubled" +
               (claim.side == plan_.side ? " and may be undone" : "");
      case ClaimKind::kHangingPair:
        return SquaresText(claim.squares.ToSet()) + " are hanging pawns";
      case ClaimKind::kChainBase:
        return ToString(first) + " is the base of the chain";
      case ClaimKind::kSiegeCount:
        return SiegeCount(claim);
      case ClaimKind::kOpenFile:
        return File(claim, "open");
      case ClaimKind::kHalfOpenFile:
        return File(claim, "half-open");
      case ClaimKind::kLeverMove:
        return LeverMove(claim);
      case ClaimKind::kCentreClosed:
      case ClaimKind::kCentreOpen:
      case ClaimKind::kCentreFixed:
      case ClaimKind::kCentreTension:
      case ClaimKind::kCentreMobile:
        return claim.line.empty() ? CentreNow(claim) : CentreThen(claim);
      case ClaimKind::kUndeveloped:
        return claim.count > kMostUnits
                   ? NumberText(claim.count) + " minor pieces are still at home"
                   : Units(claim.squares) +
                         (claim.count == 1 ? " is" : " are") + " still at home";
      case ClaimKind::kUncastled:
        return (claim.side == plan_.side ? "the king on "
                                         : "the enemy king on ") +
               ToString(first) + " has not castled";
      case ClaimKind::kKingAttackers:
        return claim.count < 2 || claim.side == plan_.side
                   ? ""
                   : NumberText(claim.count) +
                         " pieces then bear on the squares around it";
      case ClaimKind::kFileToKing:
        return "the " + FilesText(FileMask(FileOf(first))) +
               " leads to the king";
      case ClaimKind::kDiagonalOpen:
        return "the diagonal to the king is open";
      case ClaimKind::kMajority:
        return Majority(claim);
      case ClaimKind::kCandidate:
        return "the pawn on " + ToString(first) + " is the one to pass";
      case ClaimKind::kBlockade:
        if (!clauses_.empty()) return "it then stands still";
        return claim.others.empty()
                   ? ""
                   : "the pawn on " + ToString(claim.others[0]) +
                         " then stands still";
      case ClaimKind::kControl:
        return Guards(claim);
      case ClaimKind::kBishopPair:
        if (claim.side == plan_.side) return "the two bishops want open lines";
        return plan_.kind == PlanKind::kTrade ? "that breaks up the bishop pair"
                                              : "";
      case ClaimKind::kBadBishop:
        return Unit(first) + " has " + NumberText(claim.count) +
               " own fixed pawns of its colour in its way";
      case ClaimKind::kSpace:
        return Space(claim);
      case ClaimKind::kOutpostRoute:
        return "no pawn can ever attack it there";
      case ClaimKind::kKnightRim:
        return "on " + ToString(first) + " it stands on the rim";
      case ClaimKind::kScope:
        return Scope(claim);
      case ClaimKind::kMaterial:
        return plan_.kind != PlanKind::kTrade ||
                       claim.count <= claim.other_count
                   ? ""
                   : std::string(Name(claim.side)) + " has " +
                         CountText(claim.count - claim.other_count,
                                   claim.piece) +
                         " more, so each exchange brings the ending nearer";
      default:
        return "";
    }
  }

  std::string Units(const SquareList& squares) const {
    std::vector<std::string> units;
    for (const Square square : squares) units.push_back(Unit(square));
    return Join(units);
  }

  std::string Space(const Claim& claim) const {
    if (plan_.kind == PlanKind::kLever) {
      return std::string(Name(plan_.side)) + " has less room, " +
             NumberText(claim.count) + " safe squares against " +
             NumberText(claim.other_count);
    }
    if (plan_.kind == PlanKind::kTrade) {
      return "it has " + NumberText(claim.count) +
             " safe squares behind its "
             "pawns against " +
             NumberText(claim.other_count) + ", too few for all its pieces";
    }
    if (claim.line.empty()) return "";
    for (const Claim& now : plan_.claims) {
      if (now.kind == ClaimKind::kSpace && now.line.empty() &&
          now.side == claim.side && now.count + kMuchRoom <= claim.count) {
        return "the safe squares behind the pawns grow from " +
               std::to_string(now.count) + " to " + std::to_string(claim.count);
      }
    }
    return "";
  }

  std::string Scope(const Claim& claim) const {
    if (plan_.kind != PlanKind::kRegroup || claim.count > 1 ||
        !claim.line.empty()) {
      return "";
    }
    return "on " + ToString(claim.squares[0]) + " it has " +
           (claim.count == 0 ? "no useful square" : "one useful square");
  }

  const Position& position_;
  const Plan& plan_;
  std::vector<std::string> clauses_;
};

}  // namespace

std::string PlanReason(const Facts& facts, const Plan& plan) {
  return Reasoner(facts, plan).Text();
}

}  // namespace assay
