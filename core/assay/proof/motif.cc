// Looks at the winner's moves before the decisive capture, the last one first,
// for an idea that has to do with what falls; else at why it can be taken
// where it stands.
#include "assay/proof/motif.h"

#include <algorithm>
#include <optional>

#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/facts/ideas.h"

namespace assay {
namespace {

class Finder {
 public:
  Finder(const Position& position, const std::vector<Move>& line,
         const Spoils& spoils)
      : line_(line), spoils_(spoils), positions_({position}) {
    for (std::size_t i = 0; i <= spoils.ply; ++i) {
      positions_.push_back(positions_.back().AfterStep(line[i]));
    }
    Track();
  }

  MotifFound Find() const {
    if (spoils_.promotes) return Promotion();
    for (std::size_t i = spoils_.ply + 1; i-- > 0;) {
      if (line_[i].is_null() ||
          positions_[i].side_to_move() != spoils_.winner) {
        continue;
      }
      if (const auto found = ShownBy(i)) return *found;
    }
    return WhereItStands();
  }

 private:
  Side winner() const { return spoils_.winner; }
  Side loser() const { return Other(spoils_.winner); }
  // The piece that makes the decisive capture comes from here.
  Square taker() const { return line_[spoils_.ply].from(); }

  // fallen_[i]: where what falls stands before the ply's move.
  void Track() {
    fallen_.assign(spoils_.ply + 1, spoils_.square);
    for (std::size_t i = spoils_.ply; i-- > 0;) {
      const bool moves_there =
          !line_[i].is_null() && line_[i].to() == fallen_[i + 1];
      fallen_[i] = moves_there ? line_[i].from() : fallen_[i + 1];
    }
  }

  // A claim that holds after the first `plies` moves of the line.
  Claim Holding(Claim claim, std::size_t plies) const {
    claim.line.assign(line_.begin(),
                      line_.begin() + static_cast<std::ptrdiff_t>(plies));
    return claim;
  }

  MotifFound Promotion() const {
    MotifFound found;
    found.motif = Motif::kPromotion;
    found.ply = spoils_.ply;
    return found;
  }

  // An idea that the winner's move at the ply shows and that explains the
  // capture.
  std::optional<MotifFound> ShownBy(std::size_t ply) const {
    const bool captures_it = ply == spoils_.ply;
    for (const Claim& claim : IdeasShownBy(positions_[ply], line_[ply])) {
      const Motif motif =
          captures_it ? ByCapture(claim, ply) : ByAttack(claim, ply);
      if (motif == Motif::kNone) continue;
      MotifFound found;
      found.motif = motif;
      found.ply = ply;
      found.claims.push_back(Holding(claim, ply + 1));
      return found;
    }
    if (captures_it) return std::nullopt;
    if (auto found = Overloaded(ply)) return found;
    if (auto found = GuardRemoved(ply)) return found;
    return TrappedSince(ply);
  }

  // Whether the uncovered attack is on the king, or on something worth at
  // least as much as `value`: it cannot be left alone.
  bool Presses(const Position& at, const Claim& discovered, int value) const {
    for (const Square square : discovered.others) {
      const PieceKind kind = at.At(square).kind();
      if (kind == PieceKind::kKing || ExchangeValue(kind) >= value) return true;
    }
    return false;
  }

  // The capture of something guarded uncovers an attack that cannot be left
  // alone, so that nothing takes back.
  Motif ByCapture(const Claim& claim, std::size_t ply) const {
    const Position& before = positions_[ply];
    const Bitboard guards =
        before.Attackers(loser(), spoils_.square, before.Occupied());
    const int value = ExchangeValue(before.At(line_[ply].from()).kind());
    const bool presses = claim.kind == ClaimKind::kDiscovered && guards != 0 &&
                         Presses(positions_[ply + 1], claim, value);
    return presses ? Motif::kDiscovered : Motif::kNone;
  }

  Motif ByAttack(const Claim& claim, std::size_t ply) const {
    const Square fallen = fallen_[ply + 1];
    const Position& after = positions_[ply + 1];
    const bool same_taker = MovedTo(claim.squares[0], ply + 1) == taker();
    const bool among = Contains(claim.others.ToSet(), fallen);
    switch (claim.kind) {
      case ClaimKind::kFork:
        return among && same_taker ? Motif::kFork : Motif::kNone;
      case ClaimKind::kSkewer:
        return among && same_taker ? Motif::kSkewer : Motif::kNone;
      case ClaimKind::kDiscovered: {
        const bool mover_takes = MovedTo(line_[ply].to(), ply + 1) == taker();
        const bool presses = Presses(after, claim, ExchangeValue(spoils_.kind));
        // It falls where it was put between.
        const bool interposed =
            after.InCheck() && line_[ply + 1].from() == fallen;
        return (among && same_taker) || (presses && mover_takes) || interposed
                   ? Motif::kDiscovered
                   : Motif::kNone;
      }
      case ClaimKind::kPinWins:
        return claim.squares[0] == fallen ? Motif::kPin : Motif::kNone;
      default:
        return Motif::kNone;
    }
  }

  // Where the piece that stands on a square before the ply's move stands when
  // the decisive capture is made.
  Square MovedTo(Square square, std::size_t ply) const {
    for (std::size_t i = ply; i < spoils_.ply; ++i) {
      if (!line_[i].is_null() && line_[i].from() == square) {
        square = line_[i].to();
      }
    }
    return square;
  }

  // The move captures one of two things that the same piece alone guards; it
  // takes back, and the other falls.
  std::optional<MotifFound> Overloaded(std::size_t ply) const {
    if (ply + 1 >= spoils_.ply || line_[ply + 1].to() != line_[ply].to()) {
      return std::nullopt;
    }
    return SoleGuard(ply, line_[ply].to(), line_[ply + 1].from());
  }

  // The claim that a guard alone guards what falls and something else
  // (`other`; kNoSquare: anything), before the ply's move.
  std::optional<MotifFound> SoleGuard(std::size_t ply, Square other,
                                      Square guard) const {
    std::vector<Claim> claims;
    AddOverloaded(positions_[ply], winner(), claims);
    for (Claim& claim : claims) {
      const Bitboard things = claim.others.ToSet();
      if (claim.squares[0] != guard || !Contains(things, fallen_[ply]) ||
          (other != kNoSquare && !Contains(things, other))) {
        continue;
      }
      claim.kind = ClaimKind::kSoleGuard;
      MotifFound found;
      found.motif = Motif::kOverloaded;
      found.ply = ply;
      found.claims.push_back(Holding(claim, ply));
      return found;
    }
    return std::nullopt;
  }

  // The move takes the only guard of what falls.
  std::optional<MotifFound> GuardRemoved(std::size_t ply) const {
    const Position& before = positions_[ply];
    const Bitboard guards =
        before.Attackers(loser(), fallen_[ply], before.Occupied());
    if (guards != Bit(line_[ply].to())) return std::nullopt;
    MotifFound found;
    found.motif = Motif::kGuardRemoved;
    found.ply = ply;
    const Facts facts(before);
    found.claims.push_back(
        Holding(AttackCountClaim(facts, winner(), fallen_[ply]), ply));
    const Facts after(positions_[ply + 1]);
    found.claims.push_back(
        Holding(AttackCountClaim(after, winner(), fallen_[ply + 1]), ply + 1));
    return found;
  }

  // After so many plies what falls is a piece that has no way out.
  std::optional<MotifFound> Trapped(std::size_t plies) const {
    const Square square = fallen_[plies];
    const Facts facts(positions_[plies]);
    const PieceKind kind = positions_[plies].At(square).kind();
    if (kind == PieceKind::kPawn || kind == PieceKind::kKing ||
        kind == PieceKind::kNone || !IsTrapped(facts, square)) {
      return std::nullopt;
    }
    MotifFound found;
    found.motif = Motif::kTrapped;
    found.ply = plies == 0 ? 0 : plies - 1;
    found.claims.push_back(Holding(
        SquaresClaim(ClaimKind::kTrapped, loser(), Bit(square)), plies));
    return found;
  }

  // The same after the winner's move at the ply, told of the first move that
  // brought it about.
  std::optional<MotifFound> TrappedSince(std::size_t ply) const {
    auto found = Trapped(ply + 1);
    while (found.has_value() && ply >= 2) {
      ply -= 2;
      auto earlier = Trapped(ply + 1);
      if (!earlier.has_value()) break;
      found = earlier;
    }
    return found;
  }

  // No move prepared the capture: why it can be taken where it stands.
  MotifFound WhereItStands() const {
    const std::size_t ply = spoils_.ply;
    const Position& at = positions_[ply];
    const Square square = spoils_.square;
    // It was attacked before its owner moved, and nothing helped.
    if (ply == 1) {
      if (auto found = Trapped(0)) return *found;
    }
    MotifFound found;
    found.ply = ply;
    const Bitboard guards = at.Attackers(loser(), square, at.Occupied());
    const Facts facts(at);
    const int value = ExchangeValueOf(facts, square);
    if (value > 0) {
      found.claims.push_back(
          Holding(HangingClaim(loser(), square, value), ply));
    }
    if (guards == 0) {
      found.motif = Motif::kUndefended;
      found.claims.push_back(
          Holding(AttackCountClaim(facts, winner(), square), ply));
      return found;
    }
    if (!HasMany(guards)) {
      if (auto shared = SoleGuard(ply, kNoSquare, First(guards));
          shared.has_value() && value < spoils_.gain) {
        return *shared;
      }
    }
    if (AllPinned(at, guards, ply, found.claims)) {
      found.motif = Motif::kPinnedDefender;
    } else if (value > 0) {
      found.motif = Motif::kExchange;
    }
    return found;
  }

  // Whether every guard is pinned along a line that its capture would leave;
  // adds the pins, which come first.
  bool AllPinned(const Position& at, Bitboard guards, std::size_t ply,
                 std::vector<Claim>& claims) const {
    std::vector<Claim> pins;
    Bitboard pinned = 0;
    for (const Pin& pin : FindPins(at, loser())) {
      if (!Contains(guards, pin.pinned)) continue;
      if (Contains(Line(pin.behind, pin.slider), spoils_.square)) continue;
      pinned |= Bit(pin.pinned);
      pins.push_back(Holding(PinnedClaim(loser(), pin), ply));
    }
    if (pinned != guards) return false;
    claims.insert(claims.begin(), pins.begin(), pins.end());
    return true;
  }

  const std::vector<Move>& line_;
  const Spoils& spoils_;
  std::vector<Position> positions_;
  std::vector<Square> fallen_;
};

}  // namespace

const char* Name(Motif motif) {
  switch (motif) {
    case Motif::kNone:
      return "search";
    case Motif::kFork:
      return "fork";
    case Motif::kSkewer:
      return "skewer";
    case Motif::kDiscovered:
      return "discovered_attack";
    case Motif::kPin:
      return "pin";
    case Motif::kOverloaded:
      return "overloaded";
    case Motif::kGuardRemoved:
      return "guard_removed";
    case Motif::kPinnedDefender:
      return "pinned_defender";
    case Motif::kTrapped:
      return "trapped";
    case Motif::kUndefended:
      return "undefended";
    case Motif::kExchange:
      return "exchange";
    case Motif::kPromotion:
      return "promotion";
    case Motif::kMate:
      return "mate";
    case Motif::kBackRankMate:
      return "back_rank";
  }
  return "search";
}

MotifFound FindMotif(const Position& position, const std::vector<Move>& line,
                     const Spoils& spoils) {
  return Finder(position, line, spoils).Find();
}

MotifFound FindMateMotif(const Position& position,
                         const std::vector<Move>& line, Side side) {
  const Position end = AfterLine(position, line);
  MotifFound found;
  found.ply = line.empty() ? 0 : line.size() - 1;
  Claim claim = MateInClaim(side, line);
  found.motif = Motif::kMate;
  found.claims.push_back(claim);
  if (IsBackRankMate(end)) {
    found.motif = Motif::kBackRankMate;
    claim.kind = ClaimKind::kBackRank;
    found.claims.push_back(claim);
  }
  return found;
}

}  // namespace assay
