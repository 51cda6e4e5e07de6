// Squares are weighed by what they are to the side: in the centre, by its king,
// open to an enemy piece, left without any guard. What weighs little is not
// said unless there is nothing else to say. The weights are own reasoning.
#include "assay/explain/move_effects.h"

#include <algorithm>

#include "assay/explain/deed.h"
#include "assay/explain/line_text.h"
#include "assay/explain/words.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/exchange.h"
#include "assay/facts/levers.h"

namespace assay {
namespace {

constexpr Bitboard kCentre = Bit(kD4) | Bit(kE4) | Bit(kD5) | Bit(kE5);

// What a square weighs where it is what the name says.
constexpr int kInCentre = 30;
constexpr int kByTheKing = 30;
constexpr int kEnemyCanUse = 25;
constexpr int kNowUnguarded = 20;
constexpr int kOwnUnitThere = 20;
constexpr int kNewHole = 40;
constexpr int kOtherPawnCanGuard = -30;
// From here on a square is told.
constexpr int kTelling = 50;
constexpr int kTellingOfPawns = 45;
constexpr int kAnything = -1000;
constexpr std::size_t kMostSquares = 3;
// So many useful squares more or less are felt.
constexpr int kFeltScope = 3;

struct WeighedSquare {
  Square square = kNoSquare;
  int weight = 0;
};

// The heaviest squares of at least the weight, as a set.
Bitboard Heaviest(std::vector<WeighedSquare> squares, int least) {
  std::stable_sort(squares.begin(), squares.end(),
                   [](const WeighedSquare& a, const WeighedSquare& b) {
                     return a.weight > b.weight;
                   });
  Bitboard chosen = 0;
  std::size_t count = 0;
  for (const WeighedSquare& weighed : squares) {
    if (weighed.weight < least || count == kMostSquares) break;
    chosen |= Bit(weighed.square);
    ++count;
  }
  return chosen;
}

int Sum(const std::vector<WeighedSquare>& squares, Bitboard chosen) {
  int sum = 0;
  for (const WeighedSquare& weighed : squares) {
    if (Contains(chosen, weighed.square)) sum += weighed.weight;
  }
  return sum;
}

class Effects {
 public:
  Effects(const MoveView& view, const std::vector<LedgerChange>& counted)
      : view_(view),
        counted_(counted),
        before_(view.before.facts),
        after_(view.after.facts),
        side_(view.side()),
        move_(view.move()),
        kind_(before_.position().At(move_.from()).kind()),
        there_(after_.position().At(move_.to())),
        stays_(!there_.empty() && there_.side() == side_) {}

  void FindConcessions() {
    LeavesUnguarded();
    if (kind_ == PieceKind::kPawn) {
      CannotGoBack(kTellingOfPawns);
    } else {
      NoLongerGuards(kTelling);
    }
    GivesUpColour();
    ShutsIn();
    BlocksBreak();
    LetsEnemyOut();
    if (!found_.empty() || SomethingCountsAgainst()) return;
    // Nothing of weight: say what there is.
    if (kind_ == PieceKind::kPawn) {
      CannotGoBack(kAnything);
    } else {
      NoLongerGuards(1);
    }
    if (found_.empty()) StandsBeforePawn();
    if (found_.empty()) NoLongerGuards(kAnything);
  }

  void FindGains() {
    TheDeed();
    NowAttacks();
    LetsOut();
    NowGuards();
  }

  std::vector<LedgerChange> Take(std::size_t most, ClaimTable& table) {
    std::stable_sort(
        found_.begin(), found_.end(),
        [](const Found& a, const Found& b) { return a.weight > b.weight; });
    std::vector<LedgerChange> effects;
    for (Found& found : found_) {
      if (effects.size() == most) break;
      for (const Claim& claim : found.claims) {
        table.Add(claim, found.effect.claims);
      }
      effects.push_back(std::move(found.effect));
    }
    return effects;
  }

 private:
  struct Found {
    int weight = 0;
    LedgerChange effect;
    std::vector<Claim> claims;
  };

  Found& Add(int weight, Bitboard squares, Message clause) {
    Found found;
    found.weight = weight;
    found.effect.side = side_;
    found.effect.squares = squares;
    found.effect.said = Sentence(std::move(clause));
    found_.push_back(std::move(found));
    return found_.back();
  }

  Claim After(Claim claim) const {
    claim.line.insert(claim.line.begin(), view_.line.begin(), view_.line.end());
    return claim;
  }
  void AddControls(Bitboard squares, Found& found) const {
    for (const Square square : Each(squares)) {
      found.claims.push_back(ControlClaim(before_, side_, square));
      found.claims.push_back(After(ControlClaim(after_, side_, square)));
    }
  }
  void AddMove(Found& found) const {
    found.claims.push_back(LineClaim(before_.position(), side_, view_.line));
  }

  Side enemy() const { return Other(side_); }

  int GuardsOf(const Facts& facts, Square square) const {
    return PopCount(facts.Attackers(side_, square));
  }

  bool Counted(TermId term, Square square) const {
    return std::any_of(
        counted_.begin(), counted_.end(), [&](const LedgerChange& change) {
          return change.term == term && Contains(change.squares, square);
        });
  }
  // Whether a term besides the tempo counts against the side.
  bool SomethingCountsAgainst() const {
    constexpr Centipawns kLeast = 5;
    return std::any_of(counted_.begin(), counted_.end(),
                       [&](const LedgerChange& change) {
                         return change.term != TermId::kTempo &&
                                Sign(side_) * change.change_cp <= -kLeast;
                       });
  }

  // The king's square and those two steps around it, where the king stands on
  // its first two ranks and the enemy has something to attack with.
  Bitboard AroundKing() const {
    const Bitboard heavy = after_.Own(enemy(), PieceKind::kQueen) |
                           after_.Own(enemy(), PieceKind::kRook);
    const Square king = after_.position().King(side_);
    const Bitboard home =
        RelativeRankMask(side_, 0) | RelativeRankMask(side_, 1);
    if (heavy == 0 || !Contains(home, king)) return 0;
    const Bitboard near = after_.KingNeighbourhood(side_);
    Bitboard around = near;
    for (const Square square : Each(near)) around |= KingAttacks(square);
    return around & ~RelativeRankMask(side_, 0);
  }

  // Whether an enemy piece (no king) looks at the square.
  bool EnemyCanUse(Square square) const {
    return (after_.Attackers(enemy(), square) &
            ~after_.Own(enemy(), PieceKind::kKing)) != 0;
  }

  int WeightOf(Square square) const {
    int weight = 0;
    if (Contains(kCentre, square)) weight += kInCentre;
    if (Contains(AroundKing(), square)) weight += kByTheKing;
    if (EnemyCanUse(square)) weight += kEnemyCanUse;
    if (GuardsOf(after_, square) == 0) weight += kNowUnguarded;
    const Piece there = after_.position().At(square);
    if (!there.empty() && there.side() == side_) {
      // One's own piece minds only where something attacks it.
      weight = EnemyCanUse(square) ? weight + kOwnUnitThere : 0;
    }
    return weight;
  }

  // --- what is given up ---

  // Own pawns that had a guard and have none now. Pieces are the ledger's.
  void LeavesUnguarded() {
    const Bitboard pawns = after_.Pawns(side_).pawns &
                           before_.Pawns(side_).pawns & ~Bit(move_.to());
    Bitboard left = 0;
    for (const Square pawn : Each(pawns)) {
      if (GuardsOf(before_, pawn) > 0 && GuardsOf(after_, pawn) == 0 &&
          !Counted(TermId::kHanging, pawn)) {
        left |= Bit(pawn);
      }
    }
    if (left == 0) return;
    int weight = 40;
    for (const Square pawn : Each(left)) {
      if (EnemyCanUse(pawn)) weight += 40;
    }
    Found& found = Add(weight, left, Say("effect.unguarded", Squares{left}));
    AddControls(left, found);
  }

  // Squares that the moved pawn could have guarded, now or after advances, and
  // never can again.
  void CannotGoBack(int least) {
    if (move_.is_promotion() || !stays_) return;
    const auto span = [&](Square pawn) {
      return Neighbours(FrontSpan(side_, Bit(pawn)));
    };
    const Bitboard usual = RelativeRankMask(side_, 2) |
                           RelativeRankMask(side_, 3) |
                           RelativeRankMask(side_, 4);
    const Bitboard lost = span(move_.from()) & ~span(move_.to()) & usual;
    const Bitboard holes =
        after_.Pawns(side_).holes & ~before_.Pawns(side_).holes;
    std::vector<WeighedSquare> squares;
    for (const Square square : Each(lost)) {
      int weight = WeightOf(square);
      if (Contains(holes, square)) weight += kNewHole;
      if (Contains(after_.Pawns(side_).attack_span, square)) {
        weight += kOtherPawnCanGuard;
      }
      squares.push_back({square, weight});
    }
    const Bitboard chosen = Heaviest(squares, least);
    if (chosen == 0) return;
    Found& found =
        Add(Sum(squares, chosen), chosen,
            Say("effect.never_again",
                std::string(1, static_cast<char>('a' + FileOf(move_.from()))),
                Squares{chosen}));
    AddMove(found);
    for (const Square square : Each(chosen)) {
      found.claims.push_back(After(ControlClaim(after_, side_, square)));
      if (Contains(holes, square)) {
        found.claims.push_back(
            After(SquaresClaim(ClaimKind::kHole, side_, Bit(square))));
      }
    }
  }

  void NoLongerGuards(int least) {
    const Bitboard now = stays_ ? after_.Attacks(move_.to()) : 0;
    const Bitboard lost =
        before_.Attacks(move_.from()) & ~now & ~Bit(move_.to());
    std::vector<WeighedSquare> squares;
    for (const Square square : Each(lost)) {
      if (GuardsOf(after_, square) >= GuardsOf(before_, square)) continue;
      // Said by LeavesUnguarded.
      if (Contains(after_.Pawns(side_).pawns, square) &&
          GuardsOf(after_, square) == 0) {
        continue;
      }
      int weight = WeightOf(square);
      // A king or queen guards nearly everything near it.
      if (kind_ == PieceKind::kKing || kind_ == PieceKind::kQueen) {
        weight = EnemyCanUse(square) ? weight - 10 : 0;
      }
      squares.push_back({square, weight});
    }
    const Bitboard chosen = Heaviest(squares, least);
    if (chosen == 0) return;
    Found& found = Add(
        Sum(squares, chosen), chosen,
        stays_
            ? Say("effect.no_longer_guards", kind_, Squares{chosen})
            : Say("effect.guard_gone", kind_, move_.from(), Squares{chosen}));
    AddMove(found);
    AddControls(chosen, found);
  }

  // The side's last bishop of a colour is exchanged: squares of that colour by
  // the king that no pawn guards.
  void GivesUpColour() {
    if (kind_ != PieceKind::kBishop || stays_) return;
    const Bitboard colour = ColourOf(move_.from());
    if ((after_.Own(side_, PieceKind::kBishop) & colour) != 0) return;
    const Bitboard weak = AroundKing() & colour &
                          before_.Attacks(move_.from()) &
                          ~after_.Pawns(side_).pawns;
    // Pawns may look after one of them, not after all.
    if (!HasMany(weak) || (weak & ~after_.Pawns(side_).attacks) == 0) return;
    // The squares are named here.
    found_.erase(std::remove_if(found_.begin(), found_.end(),
                                [&](const Found& other) {
                                  return (other.effect.squares & weak) != 0;
                                }),
                 found_.end());
    Found& found = Add(150, weak,
                       Say("effect.gives_up_colour", side_,
                           colour == kLightSquares, Squares{weak}));
    AddControls(weak, found);
    found.claims.push_back(
        After(MaterialClaim(after_, side_, PieceKind::kBishop)));
  }

  // Own bishops that have clearly less to do because of where the moved unit
  // stands. (Heavy pieces find other lines.)
  void ShutsIn() {
    if (!stays_) return;
    const Bitboard bishops =
        after_.Own(side_, PieceKind::kBishop) & ~Bit(move_.to());
    for (const Square square : Each(bishops)) {
      if (before_.position().At(square) != after_.position().At(square)) {
        continue;
      }
      const Bitboard was = before_.Scope(side_, square);
      const Bitboard is = after_.Scope(side_, square);
      const int fell = PopCount(was) - PopCount(is);
      if (fell < kFeltScope || !Contains(before_.Attacks(square), move_.to())) {
        continue;
      }
      if (Counted(TermId::kScope, square) && ScopeCountsAgainst()) continue;
      const bool shut = PopCount(is) <= 2;
      Found& found =
          Add(20 * fell, Bit(square) | Bit(move_.to()),
              Say(shut ? "effect.shuts_in" : "effect.in_the_way", kind_,
                  move_.to(), UnitOn(after_.position(), square)));
      AddMove(found);
      found.claims.push_back(ScopeClaim(before_, side_, square));
      found.claims.push_back(After(ScopeClaim(after_, side_, square)));
    }
  }
  bool ScopeCountsAgainst() const {
    return std::any_of(
        counted_.begin(), counted_.end(), [&](const LedgerChange& change) {
          return change.term == TermId::kScope && change.side == side_ &&
                 Sign(side_) * change.change_cp < 0;
        });
  }

  // A break that was there, and that the moved piece now stands before.
  void BlocksBreak() {
    if (!stays_ || kind_ == PieceKind::kPawn) return;
    for (const LeverMove& lever : FindLeverMoves(before_, side_)) {
      const Bitboard path = Between(lever.from, lever.to) | Bit(lever.to);
      if (!Contains(path, move_.to()) ||
          FileOf(lever.from) != FileOf(move_.to())) {
        continue;
      }
      const Claim claim = LeverMoveClaim(side_, lever);
      Found& found = Add(70, Bit(lever.from) | Bit(lever.to),
                         Say("effect.blocks_break", kind_, BreakText(claim)));
      AddMove(found);
      found.claims.push_back(claim);
      return;
    }
  }

  // An enemy bishop that has clearly more to do.
  void LetsEnemyOut() {
    for (const Square square : Each(after_.Own(enemy(), PieceKind::kBishop))) {
      if (before_.position().At(square) != after_.position().At(square)) {
        continue;
      }
      const int rose = PopCount(after_.Scope(enemy(), square)) -
                       PopCount(before_.Scope(enemy(), square));
      if (rose < kFeltScope || Counted(TermId::kScope, square)) continue;
      Found& found =
          Add(15 * rose, Bit(square),
              Say("effect.lets_enemy_out", PieceKind::kBishop, square));
      AddMove(found);
      found.claims.push_back(ScopeClaim(before_, enemy(), square));
      found.claims.push_back(After(ScopeClaim(after_, enemy(), square)));
    }
  }

  void StandsBeforePawn() {
    if (!stays_) return;
    const Bitboard behind = RearSpan(side_, Bit(move_.to())) &
                            Forward(enemy(), Bit(move_.to())) &
                            after_.Pawns(side_).pawns;
    if (behind == 0) return;
    Found& found = Add(10, behind | Bit(move_.to()),
                       Say("effect.before_pawn", kind_, Squares{behind}));
    AddMove(found);
    found.claims.push_back(
        After(MaterialClaim(after_, side_, PieceKind::kPawn)));
  }

  // --- what is gained ---

  void TheDeed() {
    ClaimTable deeds;
    ClaimRefs refs;
    Message deed = DeedOf(before_.position(), view_.line, deeds, refs);
    if (deed.empty()) return;
    Found& found = Add(200, Bit(move_.to()), Say(kDeedOfMove, std::move(deed)));
    found.claims = deeds.claims();
  }

  // Enemy pieces worth as much or more that it has come to attack, guarded or
  // not.
  void NowAttacks() {
    if (!stays_ || view_.line.size() > 1) return;
    Bitboard chosen = 0;
    const Bitboard pieces = after_.position().Pieces(enemy()) &
                            ~after_.Own(enemy(), PieceKind::kKing) &
                            ~after_.Own(enemy(), PieceKind::kPawn);
    for (const Square square : Each(after_.Attacks(move_.to()) & pieces &
                                    ~before_.Attacks(move_.from()))) {
      const PieceKind target = after_.position().At(square).kind();
      // What hangs is the deed's.
      if (ExchangeValue(target) >= ExchangeValue(there_.kind()) &&
          ExchangeValueOf(after_, square) == 0) {
        chosen |= Bit(square);
      }
    }
    if (chosen == 0) return;
    Found& found =
        Add(100, chosen,
            Say("effect.attacks", kind_, UnitsOn(after_.position(), chosen)));
    AddMove(found);
    for (const Square square : Each(chosen)) {
      found.claims.push_back(After(AttackCountClaim(after_, side_, square)));
    }
  }

  void LetsOut() {
    const Bitboard sliders = (after_.Own(side_, PieceKind::kBishop) |
                              after_.Own(side_, PieceKind::kRook) |
                              after_.Own(side_, PieceKind::kQueen)) &
                             ~Bit(move_.to());
    for (const Square square : Each(sliders)) {
      if (before_.position().At(square) != after_.position().At(square)) {
        continue;
      }
      const int rose = PopCount(after_.Scope(side_, square)) -
                       PopCount(before_.Scope(side_, square));
      if (rose < kFeltScope ||
          !Contains(before_.Attacks(square), move_.from())) {
        continue;
      }
      if (Counted(TermId::kScope, square) && !ScopeCountsAgainst()) continue;
      Found& found =
          Add(20 * rose, Bit(square),
              Say("effect.lets_out", UnitOn(after_.position(), square)));
      AddMove(found);
      found.claims.push_back(ScopeClaim(before_, side_, square));
      found.claims.push_back(After(ScopeClaim(after_, side_, square)));
    }
  }

  // Squares of the centre that the moved piece has come to guard.
  void NowGuards() {
    if (!stays_ || view_.line.size() > 1) return;
    const Bitboard now =
        after_.Attacks(move_.to()) & ~before_.Attacks(move_.from()) & kCentre;
    Bitboard chosen = 0;
    for (const Square square : Each(now)) {
      if (GuardsOf(after_, square) > GuardsOf(before_, square)) {
        chosen |= Bit(square);
      }
    }
    if (chosen == 0) return;
    Found& found = Add(30 * PopCount(chosen), chosen,
                       Say("effect.guards", kind_, Squares{chosen}));
    AddMove(found);
    AddControls(chosen, found);
  }

  const MoveView& view_;
  const std::vector<LedgerChange>& counted_;
  const Facts& before_;
  const Facts& after_;
  const Side side_;
  const Move move_;
  const PieceKind kind_;
  const Piece there_;
  const bool stays_;  // the moved unit is still on its square
  std::vector<Found> found_;
};

}  // namespace

std::vector<LedgerChange> UncountedGains(
    const MoveView& view, const std::vector<LedgerChange>& counted,
    std::size_t most, ClaimTable& table) {
  Effects effects(view, counted);
  effects.FindGains();
  return effects.Take(most, table);
}

std::vector<LedgerChange> UncountedConcessions(
    const MoveView& view, const std::vector<LedgerChange>& counted,
    std::size_t most, ClaimTable& table) {
  Effects effects(view, counted);
  effects.FindConcessions();
  return effects.Take(most, table);
}

}  // namespace assay
