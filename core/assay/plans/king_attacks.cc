// King attack: pawns and pieces are brought against the enemy king.
//
// The trade recommends a pawn storm where the kings stand on different wings,
// where the centre is locked and the own chain points at the king, or where
// two pawns side by side can roll on at it: the pawns advance until one hits
// the shelter or drives a defender away. It recommends bringing pieces where
// those that look at the king would be three with the queen among them, and
// more than the defenders beside it, or where its shelter has a hole; the queen
// may follow where a rook is lifted over the third rank to join two pieces that
// look at the king, or where a pawn wedged on the fifth rank keeps the knights
// of the defence away.
//
// Not recommended with the queens off, in an open centre against the better
// developed side, before the own minor pieces are out, nor where nothing points
// at the king.
#include <algorithm>
#include <cstdlib>

#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/kings.h"
#include "assay/facts/routes.h"
#include "assay/plans/best_drafts.h"
#include "assay/plans/pawn_play.h"
#include "assay/plans/stops.h"

namespace assay {
namespace {

// Own reasoning on the scale of the weights: a lever on the shelter opens a
// file at the king, about what a file, a gap and a piece's look at the king are
// worth together; each reason that handbooks give changes it by about a tempo.
constexpr Centipawns kOppositeWings = 56;
constexpr Centipawns kChainPoints = 50;
constexpr Centipawns kDuo = 42;
constexpr Centipawns kHook = 10;          // the pawn hit has moved already
constexpr Centipawns kOpensNothing = -8;  // a piece is driven off, no pawn hit
constexpr Centipawns kRookBehind = 8;     // on the file that the storm opens
constexpr Centipawns kLooksAtKing = 5;    // each piece, three at most
constexpr Centipawns kOpenCentre = -20;
constexpr Centipawns kEachUndeveloped = -8;

constexpr Centipawns kPiecesCome = 24;
constexpr Centipawns kEachMore = 10;  // attacker than there are defenders
constexpr Centipawns kGap = 6;
constexpr Centipawns kJoinsFire = 6;   // on what another piece looks at
constexpr Centipawns kQueenAway = -6;  // she needs a move or two
constexpr Centipawns kLineToKing = 8;

constexpr Centipawns kMostSeen = 15;  // of what the ledger says
constexpr Centipawns kLeast = 20;
constexpr Centipawns kMost = 80;

constexpr int kMostStormMoves = 4;
constexpr int kMostRoute = 3;
constexpr int kMostPieceMoves = 4;
constexpr int kFewestAttackers = 3;
constexpr int kFewestForLift = 2;  // that look at the king already
constexpr int kQueenFollows = 2;   // moves
constexpr int kMostUndeveloped = 2;

// Files f to h or a to c, where the king stands on one of them.
Bitboard WingOf(Square king) {
  if (FileOf(king) >= 5) return FileMask(5) | FileMask(6) | FileMask(7);
  if (FileOf(king) <= 2) return FileMask(0) | FileMask(1) | FileMask(2);
  return 0;
}

// One piece on its way to where it looks at the king.
struct Recruit {
  Square from = kNoSquare;
  Square to = kNoSquare;
  int moves = 0;
  int order = 0;  // the less, the sooner it is chosen
};

class Attack {
 public:
  explicit Attack(const Outlook& outlook)
      : outlook_(outlook),
        facts_(outlook.facts),
        side_(outlook.side),
        enemy_(outlook.enemy()),
        king_(outlook.position.King(outlook.enemy())),
        wing_(WingOf(king_)),
        looking_(KingAttackers(facts_, enemy_)),
        undeveloped_(PopCount(UndevelopedPieces(facts_, side_))),
        wedged_(HasWedge()) {}

  // Queen on, and the own side is not the one that an open centre punishes.
  bool IsTimely() const {
    if (facts_.Own(side_, PieceKind::kQueen) == 0) return false;
    if (undeveloped_ > kMostUndeveloped) return false;
    const int theirs = PopCount(UndevelopedPieces(facts_, enemy_));
    return facts_.centre() != Centre::kOpen || undeveloped_ <= theirs;
  }

  void OfferStorms(Shortlist& best) const {
    if (wing_ == 0 || RelativeRank(enemy_, king_) > 1) return;
    if (PopCount(Officers()) < kFewestAttackers) return;
    const bool opposite = AreOpposite();
    const bool chain = ChainPointsTo(outlook_, king_);
    // The wings and the chain say where to attack; a duo alone does not.
    const Bitboard duo = HasPiecesFor(Duo()) ? Duo() : 0;
    if (!opposite && !chain && duo == 0) return;
    for (const Square pawn :
         InOrder(side_, facts_.Pawns(side_).pawns & wing_)) {
      const Centipawns reason = opposite              ? kOppositeWings
                                : chain               ? kChainPoints
                                : Contains(duo, pawn) ? kDuo
                                                      : 0;
      if (reason != 0) OfferStorm(pawn, reason, best);
    }
  }

  void OfferPieces(Shortlist& best) const {
    // Where nothing points at the king there is no attack to join.
    if (looking_ == 0) return;
    std::vector<Move> moves;
    Position at = outlook_.position;
    // Each that comes may open the way of the next.
    while (moves.empty() || !IsEnough(Facts(at))) {
      if (at.InCheck() || !JoinNext(at, moves)) break;
    }
    if (moves.empty() || at.InCheck()) return;
    const Facts after(at);
    if (!IsEnough(after)) return;
    if (MostHanging(at, side_) > MostHanging(outlook_.position, side_)) return;
    OfferJoined(moves, after, 0, best);
  }

  // A rook over the third rank to a file of the king's wing.
  void OfferLifts(Shortlist& best) const {
    const int looking = PopCount(looking_) + (wedged_ ? 1 : 0);
    if (wing_ == 0 || looking < kFewestForLift) return;
    if (facts_.centre() == Centre::kOpen) return;
    const Bitboard third = RelativeRankMask(side_, 2);
    const Bitboard occupied = outlook_.position.Occupied();
    const Bitboard home =
        RelativeRankMask(side_, 0) | RelativeRankMask(side_, 1);
    for (const Square rook : InOrder(
             side_, facts_.Own(side_, PieceKind::kRook) & home & ~looking_)) {
      const Bitboard up = FileMask(FileOf(rook)) & third;
      if ((facts_.Attacks(rook) & up & ~occupied) == 0) continue;
      const Square over = First(up);
      const Bitboard along =
          PieceAttacks(PieceKind::kRook, over, occupied & ~Bit(rook));
      for (const Square to : InOrder(side_, third & wing_ & ~occupied)) {
        if (to == over) {
          OfferLift({rook, over}, best);
        } else if (Contains(along, to)) {
          OfferLift({rook, over, to}, best);
        }
      }
    }
  }

 private:
  void OfferLift(const SquareList& route, Shortlist& best) const {
    const Bitboard seen =
        PieceAttacks(PieceKind::kRook, route[route.size() - 1],
                     outlook_.position.Occupied() & ~Bit(route[0]));
    if ((seen & facts_.KingNeighbourhood(enemy_)) == 0) return;
    std::vector<Move> moves;
    const std::optional<Position> end =
        PlayRoute(outlook_.position, side_, route, moves);
    if (!end.has_value() || end->InCheck()) return;
    const Facts after(*end);
    const Bitboard attackers = KingAttackers(after, enemy_);
    if (PopCount(attackers) <= PopCount(looking_)) return;
    if (PopCount(attackers) < Defenders(after)) return;
    const bool queen = (attackers & after.Own(side_, PieceKind::kQueen)) != 0;
    if (!queen && !QueenFollows(after)) return;
    Bitboard fire = 0;
    for (const Square from : Each(attackers & ~Bit(moves.back().to()))) {
      fire |= after.Attacks(from);
    }
    const bool joins = (seen & fire & after.KingNeighbourhood(enemy_)) != 0;
    OfferJoined(moves, after, joins ? kJoinsFire : 0, best);
  }

  // The own pieces, queen included.
  Bitboard Officers() const {
    return outlook_.position.Pieces(side_) & ~facts_.Pawns(side_).pawns &
           ~facts_.Own(side_, PieceKind::kKing);
  }

  bool AreOpposite() const {
    const Bitboard own = WingOf(outlook_.position.King(side_));
    return own != 0 && own != wing_;
  }

  // A rammed pawn on the fifth rank of the e-file (d-file), guarded by the pawn
  // beside it, towards the wing of the king: it takes f6 (c6) from a knight.
  bool HasWedge() const {
    if (wing_ == 0) return false;
    const bool kings_wing = FileOf(king_) >= 5;
    const Bitboard head = facts_.Pawns(side_).rammed &
                          FileMask(kings_wing ? 4 : 3) &
                          RelativeRankMask(side_, 4);
    const Bitboard guards =
        facts_.Pawns(side_).pawns & FileMask(kings_wing ? 3 : 4);
    return (PawnAttacks(enemy_, head) & guards) != 0;
  }

  // The f-pawn (c-pawn) with the e-pawn (d-pawn) beside it, on their fourth
  // rank or further.
  Bitboard Duo() const {
    const Bitboard outer = FileMask(FileOf(king_) >= 5 ? 5 : 2);
    const Bitboard inner = FileMask(FileOf(king_) >= 5 ? 4 : 3);
    const Bitboard far = FillForward(side_, RelativeRankMask(side_, 3));
    const Bitboard own = facts_.Pawns(side_).pawns & far;
    return own & outer & Neighbours(own & inner);
  }

  // Whether a piece looks at the king or a rook stands behind the pawn.
  bool HasPiecesFor(Bitboard pawn) const {
    const Bitboard behind = RearSpan(side_, pawn);
    return (looking_ | (facts_.Own(side_, PieceKind::kRook) & behind)) != 0;
  }

  // Enemy pawns on the wing, and pieces there that a pawn drives away.
  // For the outer pawn of a duo also the pawn that guards the wing from the
  // e-file (d-file).
  Bitboard Hittable(Square pawn) const {
    const Position& position = outlook_.position;
    if (Contains(Duo(), pawn)) {
      const Bitboard beside = Neighbours(FileMask(FileOf(pawn))) &
                              facts_.Pawns(enemy_).pawns &
                              RelativeRankMask(enemy_, 2);
      if (beside != 0) return beside | HittableOnWing(position);
    }
    return HittableOnWing(position);
  }

  Bitboard HittableOnWing(const Position& position) const {
    const Bitboard zone =
        wing_ & FillForward(side_, RelativeRankMask(side_, 4));
    const Bitboard guards = facts_.Own(enemy_, PieceKind::kKnight) |
                            facts_.Own(enemy_, PieceKind::kBishop) |
                            facts_.Own(enemy_, PieceKind::kRook);
    return ((guards & zone) | (facts_.Pawns(enemy_).pawns & zone)) &
           position.Pieces(enemy_);
  }

  // The nearest square ahead where the pawn hits something; kNoSquare where
  // something stands before it or where it hits already.
  Square GoalOf(Square pawn) const {
    const Bitboard hittable = Hittable(pawn);
    if ((PawnAttacks(side_, Bit(pawn)) & hittable) != 0) return kNoSquare;
    Bitboard at = Bit(pawn);
    while (true) {
      at = Forward(side_, at) & ~outlook_.position.Occupied();
      if (at == 0) return kNoSquare;
      if ((PawnAttacks(side_, at) & hittable) != 0) return First(at);
    }
  }

  // The pawn's steps to the goal after `moves`; false where that is illegal.
  bool Walk(Square pawn, Square goal, std::vector<Move>& moves) const {
    while (pawn != goal) {
      Bitboard next = Forward(side_, Bit(pawn));
      if (RelativeRank(side_, pawn) == 1 && First(next) != goal) {
        next = Forward(side_, next);
      }
      const std::optional<Position> at =
          PlayAlone(outlook_.position, side_, moves);
      if (!at.has_value()) return false;
      const Move move = FindMove(*at, side_, pawn, First(next));
      if (move.is_null()) return false;
      moves.push_back(move);
      pawn = First(next);
    }
    return true;
  }

  // The storm, with a pawn brought up to guard its steps where it needs one;
  // empty where it cannot be made sound.
  std::vector<Move> SoundStorm(Square pawn, Square goal) const {
    std::vector<Move> moves;
    if (!Walk(pawn, goal, moves)) return {};
    const std::size_t steps = moves.size();
    if (steps <= kMostStormMoves && AreSound(outlook_, moves)) return moves;
    if (steps >= kMostStormMoves) return {};
    const Bitboard beside = Neighbours(FileMask(FileOf(pawn)));
    for (const Square helper :
         InOrder(side_, facts_.Pawns(side_).pawns & beside)) {
      std::vector<Move> helped = Helped(helper, pawn, goal);
      if (!helped.empty()) return helped;
    }
    return {};
  }

  // The storm after an advance of the helper that guards a step of it; empty
  // where there is none that makes it sound.
  std::vector<Move> Helped(Square helper, Square pawn, Square goal) const {
    const Bitboard one = Forward(side_, Bit(helper));
    const Bitboard two = Forward(side_, one & RelativeRankMask(side_, 2));
    for (const Square to : InOrder(side_, one | two)) {
      const Move help = FindMove(outlook_.position, side_, helper, to);
      if (help.is_null() || help.is_promotion()) continue;
      std::vector<Move> moves = {help};
      if (!Walk(pawn, goal, moves) || !GuardsOne(to, moves)) continue;
      if (AreSound(outlook_, moves)) return moves;
    }
    return {};
  }

  // Whether the helper's pawn then guards a step of the storm.
  bool GuardsOne(Square helper, const std::vector<Move>& moves) const {
    const Bitboard guarded = PawnAttacks(side_, Bit(helper));
    return std::any_of(moves.begin() + 1, moves.end(), [guarded](Move move) {
      return Contains(guarded, move.to());
    });
  }

  void OfferStorm(Square pawn, Centipawns reason, Shortlist& best) const {
    const Square goal = GoalOf(pawn);
    if (goal == kNoSquare) return;
    Draft draft;
    draft.kind = PlanKind::kKingAttack;
    draft.moves = SoundStorm(pawn, goal);
    if (draft.moves.empty()) return;
    const std::optional<Position> end =
        PlayAlone(outlook_.position, side_, draft.moves);
    if (!end.has_value() || end->InCheck()) return;
    // The own king must not be laid bare by it.
    const Facts after(*end);
    if (!AreOpposite() && FindOpenDiagonals(after, side_).size >
                              FindOpenDiagonals(facts_, side_).size) {
      return;
    }
    const Bitboard hit = PawnAttacks(side_, Bit(goal)) & Hittable(pawn);
    const Centipawns value = ValueOfStorm(pawn, hit, reason, *end);
    if (value < kLeast) return;
    draft.targets = {king_};
    for (const Square target : Each(hit)) draft.targets.Add(target);
    DescribeStorm(hit & facts_.Pawns(enemy_).pawns, draft);
    best.Offer(outlook_, std::move(draft), value);
  }

  Centipawns ValueOfStorm(Square pawn, Bitboard hit, Centipawns reason,
                          const Position& end) const {
    Centipawns value = reason;
    const Bitboard moved =
        wing_ & facts_.Pawns(enemy_).pawns & ~RelativeRankMask(enemy_, 1);
    if ((hit & moved) != 0) value += kHook;
    if ((hit & facts_.Pawns(enemy_).pawns) == 0) value += kOpensNothing;
    const Bitboard file = FileMask(FileOf(pawn));
    if ((facts_.Own(side_, PieceKind::kRook) & file) != 0) value += kRookBehind;
    value += kLooksAtKing * std::min(PopCount(looking_), 3);
    if (facts_.centre() == Centre::kOpen) value += kOpenCentre;
    value += kEachUndeveloped * undeveloped_;
    return std::min(value + Seen(end), kMost);
  }

  void DescribeStorm(Bitboard pawns_hit, Draft& draft) const {
    if (pawns_hit != 0) {
      const Move last = draft.moves.back();
      const Bitboard attacked =
          PawnAttacks(side_, last.to()) & facts_.Pawns(enemy_).pawns;
      Claim claim = LeverMoveClaim(side_, {last.from(), last.to(), attacked});
      std::vector<Move> before = draft.moves;
      before.pop_back();
      claim.line = WithPasses(outlook_.position, side_, before);
      draft.claims.push_back(std::move(claim));
    }
    draft.claims.push_back(CentreClaim(facts_));
    draft.claims.push_back(ShelterClaim(facts_, enemy_));
    if (looking_ != 0) {
      draft.claims.push_back(KingAttackersClaim(facts_, enemy_));
    }
  }

  // A share of what the ledger says of the end.
  Centipawns Seen(const Position& end) const {
    const Centipawns change =
        ScoreAt(outlook_, end) - ScoreAt(outlook_, outlook_.position);
    return std::clamp(change / 2, -kMostSeen, kMostSeen);
  }

  // Enemy pieces that stand by their king; a rook there seldom defends.
  int Defenders(const Facts& facts) const {
    int count = 0;
    const Bitboard guards = facts.Own(enemy_, PieceKind::kQueen) |
                            facts.Own(enemy_, PieceKind::kBishop) |
                            facts.Own(enemy_, PieceKind::kKnight);
    for (const Square square : Each(guards)) {
      if (KingDistance(square, king_) <= 2) ++count;
    }
    return count;
  }

  bool HasHole(const Facts& facts) const {
    return ShelterGaps(facts, enemy_) > 0 || FilesToKing(facts, enemy_) != 0 ||
           FindOpenDiagonals(facts, enemy_).size > 0;
  }

  // The pieces that look at the king, and rooks on a file that leads to it.
  Bitboard AttackersIn(const Facts& facts) const {
    const Bitboard rooks = facts.Own(side_, PieceKind::kRook);
    return KingAttackers(facts, enemy_) | (rooks & FilesToKing(facts, enemy_));
  }

  // Without the queen, or with fewer than three, an attack seldom gets there.
  bool IsEnough(const Facts& facts) const {
    const Bitboard attackers = AttackersIn(facts);
    const int count = PopCount(attackers);
    const bool queen = (attackers & facts.Own(side_, PieceKind::kQueen)) != 0;
    if (!queen && !(wedged_ && QueenFollows(facts))) return false;
    if (count + (wedged_ && !queen ? 1 : 0) < kFewestAttackers) return false;
    const int defenders = Defenders(facts);
    return count > defenders || (count + 1 >= defenders && HasHole(facts));
  }

  // Whether the queen gets to where she looks at the king before long.
  bool QueenFollows(const Facts& facts) const {
    const Bitboard near = facts.KingNeighbourhood(enemy_);
    for (const Square queen : Each(facts.Own(side_, PieceKind::kQueen))) {
      const Reach reach(facts, queen, kQueenFollows);
      for (int moves = 1; moves <= kQueenFollows; ++moves) {
        const Bitboard there = reach.NewAfter(moves) & ~facts.Attacked(enemy_);
        for (const Square to : Each(there)) {
          const Bitboard seen = PieceAttacks(
              PieceKind::kQueen, to, facts.position().Occupied() & ~Bit(queen));
          if ((seen & near) != 0) return true;
        }
      }
    }
    return false;
  }

  // Brings the nearest piece that can come; false where none can.
  bool JoinNext(Position& at, std::vector<Move>& moves) const {
    const Position now = at;  // `here` refers to it
    const Facts here(now);
    const Bitboard far = now.Pieces(side_) & ~here.Pawns(side_).pawns &
                         ~here.Own(side_, PieceKind::kKing) &
                         ~KingAttackers(here, enemy_);
    Recruit recruits[16];
    int size = 0;
    for (const Square from : InOrder(side_, far)) {
      const Recruit recruit = RecruitFrom(here, from);
      if (recruit.to != kNoSquare && size < 16) recruits[size++] = recruit;
    }
    std::stable_sort(
        recruits, recruits + size,
        [](const Recruit& a, const Recruit& b) { return a.order < b.order; });
    for (int i = 0; i < size; ++i) {
      if (Join(here, recruits[i], at, moves)) return true;
    }
    return false;
  }

  // The way of one piece to where it looks at the king without a check.
  Recruit RecruitFrom(const Facts& here, Square from) const {
    const PieceKind kind = here.position().At(from).kind();
    const Reach reach(here, from, kMostRoute);
    const Bitboard near = here.KingNeighbourhood(enemy_);
    const Bitboard chased =
        ChasedByPawns(here, enemy_) & ~here.Pawns(side_).attacks;
    Bitboard barred = here.position().Occupied() | RelativeRankMask(side_, 7);
    if (kind == PieceKind::kQueen) {
      // Chased by a pawn it just moves on, and the shelter has a hole.
      barred |= here.Attacked(enemy_);
    } else if (!wedged_ || kind != PieceKind::kKnight) {
      // Beside a wedge the pawn that chases a knight leaves holes that cannot
      // be guarded.
      barred |= chased;
    }
    const Bitboard occupied = here.position().Occupied() & ~Bit(from);
    Recruit best;
    int most = 0;
    for (int moves = 1; moves <= kMostRoute && most == 0; ++moves) {
      for (const Square to : InOrder(side_, reach.NewAfter(moves) & ~barred)) {
        const Bitboard seen = PieceAttacks(kind, to, occupied);
        if (Contains(seen, king_)) continue;
        const int away = KingDistance(to, king_) +
                         std::abs(FileOf(to) - FileOf(king_)) +
                         (Contains(chased, to) ? 2 : 0);
        // What it looks at counts most, then how near it stands.
        const int looks = std::max(1, PopCount(seen & near) * 16 - away);
        if ((seen & near) == 0 || looks <= most) continue;
        most = looks;
        best = {from, to, moves, moves * 4 + OrderOf(kind)};
      }
    }
    return best;
  }

  // Among pieces equally near, minor pieces first.
  static int OrderOf(PieceKind kind) {
    return kind == PieceKind::kKnight   ? 0
           : kind == PieceKind::kBishop ? 1
           : kind == PieceKind::kQueen  ? 2
                                        : 3;
  }

  // Plays the piece's way on; false, and nothing changed, where it is barred.
  bool Join(const Facts& facts, const Recruit& recruit, Position& at,
            std::vector<Move>& moves) const {
    if (moves.size() + recruit.moves > kMostPieceMoves) return false;
    const Reach reach(facts, recruit.from, kMostRoute);
    const int before = PopCount(KingAttackers(facts, enemy_));
    for (const SquareList& route : RoutesInOrder(reach, side_, recruit.to, 2)) {
      std::vector<Move> more = moves;
      const std::optional<Position> end = PlayRoute(at, side_, route, more);
      if (!end.has_value() || end->InCheck()) continue;
      if (PopCount(KingAttackers(Facts(*end), enemy_)) <= before) continue;
      at = *end;
      moves = std::move(more);
      return true;
    }
    return false;
  }

  void OfferJoined(const std::vector<Move>& moves, const Facts& after,
                   Centipawns extra, Shortlist& best) const {
    Draft draft;
    draft.kind = PlanKind::kKingAttack;
    draft.moves = moves;
    draft.targets = {king_};
    const Bitboard files = FilesToKing(after, enemy_) & kRank1;
    const OpenDiagonals diagonals = FindOpenDiagonals(after, enemy_);
    const int attackers = PopCount(AttackersIn(after));
    Centipawns value = kPiecesCome + extra;
    value += kEachMore * (attackers - Defenders(after));
    value += kGap * ShelterGaps(after, enemy_);
    if (files != 0) value += kLineToKing;
    if (diagonals.size > 0) value += kLineToKing;
    if (facts_.centre() == Centre::kOpen) value += kOpenCentre / 2;
    const Bitboard queens = after.Own(side_, PieceKind::kQueen);
    if ((KingAttackers(after, enemy_) & queens) == 0) value += kQueenAway;
    value += kEachUndeveloped * undeveloped_;
    value = std::min(value + Seen(after.position()), kMost);
    if (value < kLeast) return;
    const std::vector<Move> line = WithPasses(outlook_.position, side_, moves);
    const auto add = [&](Claim claim) {
      claim.line = line;
      draft.claims.push_back(std::move(claim));
    };
    add(KingAttackersClaim(after, enemy_));
    add(ShelterClaim(after, enemy_));
    for (const Square file : Each(files)) {
      add(FileToKingClaim(after, enemy_, FileOf(file)));
    }
    for (const OpenDiagonal& diagonal : diagonals) {
      add(DiagonalOpenClaim(after, enemy_, diagonal));
    }
    best.Offer(outlook_, std::move(draft), value);
  }

  const Outlook& outlook_;
  const Facts& facts_;
  const Side side_;
  const Side enemy_;
  const Square king_;       // the enemy's
  const Bitboard wing_;     // where it stands; empty in the middle
  const Bitboard looking_;  // own pieces that look at its neighbourhood
  const int undeveloped_;
  const bool wedged_;
};

}  // namespace

void DraftKingAttacks(const Outlook& outlook, std::vector<Draft>& drafts) {
  if (outlook.facts.InCheck()) return;
  const Attack attack(outlook);
  if (!attack.IsTimely()) return;
  Shortlist best(2);
  attack.OfferStorms(best);
  attack.OfferPieces(best);
  attack.OfferLifts(best);
  best.MoveTo(drafts);
}

}  // namespace assay
