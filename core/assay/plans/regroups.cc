// Regroup: the piece that does least is brought to where it does more.
//
// The trade recommends it in quiet positions (often put as: find the
// worst-placed piece and improve it): a knight on the rim or with no squares,
// a bishop behind its own pawns, a minor piece that an outpost waits for, a
// rook that looks at its own pawns. Not recommended to a square from which a
// pawn turns it away at once, nor back home; and pieces that have not moved
// yet are developed, not regrouped, save the bishop that its own pawns shut in.
//
// A knight also goes to a post in the centre that is no outpost: guarded, and
// with no pawn that could turn it away for nothing (Ne5 before pawns on d4 and
// f7, Nd5 before one on d6 that e7-e6 would give up). There it may be taken,
// but whoever takes it gives the square a pawn or a file. And a minor piece
// goes before an isolated pawn of the central files, which no pawn can ask to
// leave. And a bishop that sees nothing from where it is goes where it hits a
// pawn that cannot run away.
//
// Squares are compared by what a piece would do there, alone; the few best
// journeys are then judged by the ledger.
#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/pieces.h"
#include "assay/facts/routes.h"
#include "assay/plans/best_drafts.h"
#include "assay/plans/weaknesses.h"

namespace assay {
namespace {

constexpr int kMostMoves = 3;
// Journeys that the ledger is asked about.
constexpr int kMostJourneys = 4;
// How much better a journey's end has to be at first sight, and by the ledger
// with the promise: some three squares of scope.
constexpr int kLeastBetter = 15;
constexpr Centipawns kLeastGain = 25;

// For ranking squares only, about the weights of the ledger: a square of scope
// for knight, bishop and rook, an outpost, the rim, an enemy pawn that no pawn
// guards in view.
constexpr int kScope[kPieceKinds] = {0, 8, 5, 4, 0, 0};
constexpr int kOutpost[kPieceKinds] = {0, 30, 18, 0, 0, 0};
constexpr int kFarPost = 20;
constexpr int kPost = 10;
constexpr int kRim = 14;
constexpr int kWeakPawnSeen = 5;
// For a bad bishop that gets past the third rank, out of its pawns.
constexpr int kFreed = 20;
// What a move costs at this stage: the opponent makes one, too.
constexpr int kMoveCost = 5;

// An outpost reached: besides what the ledger says of the piece there, the
// opponent has to give something to be rid of it. Own reasoning, about
// what the ledger says.
constexpr Centipawns kOutpostPromise = 28;
// A post that pieces alone can dispute: the ledger has the knight's squares
// but not that it has to be answered, by an exchange or by a move that gives
// something up. Own reasoning, most of an outpost's promise in the enemy half
// with a pawn behind it, half of it short of that.
constexpr Centipawns kFarPostPromise = 22;
constexpr Centipawns kPostPromise = 14;
// A minor piece ahead of an isolated pawn of the central files: an outpost's
// weight (20 to 30) for the square that no pawn can take back, and a weak
// pawn's (10 to 25) held; the ledger sees the piece's squares only. A bishop
// blocks less well than it moves: half.
constexpr Centipawns kKnightBlockade = 35;
constexpr Centipawns kBishopBlockade = 18;
// A bad bishop let out of its pawns: the weight speaks of the pawns, which
// stay, not of the bishop's new work. Own reasoning, two pawns' worth of it.
constexpr Centipawns kFreedBishopPromise = 16;

// A bishop that saw nothing hits a weak pawn that stays: as a blockade by a
// knight, since a guard is bound to the pawn from then on.
constexpr Centipawns kIdleBishopHits = 35;
// It sees nothing with at most so many squares of the enemy half before it that
// no pawn guards.
constexpr int kSeesNothing = 1;

struct Journey {
  Square from = kNoSquare;
  Square to = kNoSquare;
  int better = 0;
};

bool IsRim(Square square) { return FileOf(square) == 0 || FileOf(square) == 7; }

class Regrouper {
 public:
  explicit Regrouper(const Outlook& outlook)
      : outlook_(outlook),
        facts_(outlook.facts),
        side_(outlook.side),
        chased_(ChasedByPawns(facts_, outlook.enemy())),
        posts_(PossiblePosts()),
        unguarded_(facts_.Pawns(outlook.enemy()).pawns &
                   ~facts_.Pawns(outlook.enemy()).attacks) {}

  void OfferTo(BestDrafts& best) {
    FindJourneys();
    const int tried = std::min(size_, kMostJourneys);
    std::partial_sort(
        journeys_, journeys_ + tried, journeys_ + size_,
        [](const Journey& a, const Journey& b) { return a.better > b.better; });
    for (int i = 0; i < tried; ++i) Offer(journeys_[i], best);
  }

 private:
  // What the piece does on a square, for comparison with others.
  int Placed(PieceKind kind, Square from, Square square) const {
    const Bitboard occupied = facts_.position().Occupied() & ~Bit(from);
    const Bitboard attacks = PieceAttacks(kind, square, occupied);
    const Bitboard own = facts_.position().Pieces(side_) & ~Bit(from);
    const Bitboard scope =
        attacks & ~own & ~facts_.Pawns(outlook_.enemy()).attacks;
    int value = kScope[Index(kind)] * PopCount(scope) +
                kWeakPawnSeen * PopCount(attacks & unguarded_);
    if (Contains(facts_.Pawns(side_).outposts, square)) {
      value += kOutpost[Index(kind)];
    }
    if (kind == PieceKind::kKnight) {
      if (IsRim(square)) value -= kRim;
      if (IsPost(from, square)) {
        value += RelativeRank(side_, square) >= 4 ? kFarPost : kPost;
      }
    }
    return value;
  }

  // Squares of the central files, from the fourth rank to the sixth, from
  // which no pawn turns a piece away for nothing.
  Bitboard PossiblePosts() const {
    const Bitboard ranks = RelativeRankMask(side_, 3) |
                           RelativeRankMask(side_, 4) |
                           RelativeRankMask(side_, 5);
    return Facts::kCentreFiles & ranks & ~facts_.Pawns(side_).outposts &
           ~facts_.Pawns(outlook_.enemy()).attacks &
           ~ChasedFreely(facts_, outlook_.enemy());
  }

  // Whether a knight that comes from a square is held on another: by a pawn,
  // or by as many pieces as attack it.
  bool IsPost(Square from, Square square) const {
    if (!Contains(posts_, square)) return false;
    if (Contains(facts_.Pawns(side_).attacks, square)) return true;
    const Bitboard guards = facts_.Attackers(side_, square) & ~Bit(from);
    const Bitboard attackers = facts_.Attackers(outlook_.enemy(), square);
    return PopCount(guards) >= PopCount(attackers);
  }

  // Where a piece of the kind has no business ending up.
  Bitboard Unsuitable(PieceKind kind) const {
    Bitboard squares =
        RelativeRankMask(side_, 0) | facts_.position().Occupied() |
        (kind == PieceKind::kKnight ? chased_ & ~posts_ : chased_);
    if (kind == PieceKind::kRook) {
      // Open files and the seventh rank are a plan of their own.
      squares |= facts_.OpenFiles() | facts_.HalfOpenFiles(side_) |
                 RelativeRankMask(side_, 6) |
                 facts_.AttackedBy(outlook_.enemy(), PieceKind::kKnight) |
                 facts_.AttackedBy(outlook_.enemy(), PieceKind::kBishop);
    } else {
      // An enemy minor piece may ask the question only where a pawn stands by.
      const Bitboard met =
          facts_.AttackedBy(outlook_.enemy(), PieceKind::kKnight) |
          facts_.AttackedBy(outlook_.enemy(), PieceKind::kBishop);
      const Bitboard held = facts_.Pawns(side_).attacks |
                            (kind == PieceKind::kKnight ? posts_ : 0);
      squares |= met & ~held;
    }
    return squares;
  }

  Bitboard Candidates() const {
    const Bitboard minors = facts_.Own(side_, PieceKind::kKnight) |
                            facts_.Own(side_, PieceKind::kBishop);
    const Bitboard settled = minors & facts_.Pawns(side_).outposts;
    Bitboard at_home = UndevelopedPieces(facts_, side_);
    const bool opening = PopCount(at_home) > 1;
    for (const Square bishop : Each(facts_.Own(side_, PieceKind::kBishop))) {
      if (!opening && BadBishopPawns(facts_, side_, bishop) != 0) {
        at_home &= ~Bit(bishop);
      }
    }
    Bitboard pieces = minors & ~settled & ~at_home;
    if (!opening) pieces |= facts_.Own(side_, PieceKind::kRook);
    return pieces & ~facts_.Pinned(side_);
  }

  void FindJourneys() {
    for (const Square from : InOrder(side_, Candidates())) {
      const PieceKind kind = facts_.position().At(from).kind();
      const bool bad = kind == PieceKind::kBishop &&
                       BadBishopPawns(facts_, side_, from) != 0;
      const int now = Placed(kind, from, from);
      const Bitboard unsuitable = Unsuitable(kind);
      const Reach reach(facts_, from, kMostMoves);
      Journey best{from, kNoSquare, kLeastBetter - 1};
      for (int moves = 1; moves <= kMostMoves; ++moves) {
        for (const Square to :
             InOrder(side_, reach.NewAfter(moves) & ~unsuitable)) {
          const int freed = bad && RelativeRank(side_, to) >= 3 ? kFreed : 0;
          const int better =
              Placed(kind, from, to) + freed - now - kMoveCost * moves;
          if (Contains(chased_, to) &&
              (kind != PieceKind::kKnight || !IsPost(from, to))) {
            continue;
          }
          if (better > best.better) best = {from, to, better};
        }
      }
      if (best.to != kNoSquare && size_ < 16) journeys_[size_++] = best;
    }
  }

  void Offer(const Journey& journey, BestDrafts& best) const {
    const Reach reach(facts_, journey.from, kMostMoves);
    for (const SquareList& route : RoutesInOrder(reach, side_, journey.to, 3)) {
      Draft draft;
      draft.kind = PlanKind::kRegroup;
      if (!PlayRoute(outlook_.position, side_, route, draft.moves)) continue;
      draft.targets = {journey.to};
      Describe(journey, route, draft);
      best.Offer(draft, kLeastGain);
      return;
    }
  }

  void Describe(const Journey& journey, const SquareList& route,
                Draft& draft) const {
    const bool minor =
        facts_.position().At(journey.from).kind() == PieceKind::kKnight ||
        facts_.position().At(journey.from).kind() == PieceKind::kBishop;
    if (minor && Contains(facts_.Pawns(side_).outposts, journey.to)) {
      Claim claim = SquaresClaim(ClaimKind::kOutpostRoute, side_, 0);
      claim.squares = route;
      draft.claims.push_back(claim);
      if (!IsRim(journey.to)) draft.promise += kOutpostPromise;
    }
    const PieceKind kind = facts_.position().At(journey.from).kind();
    if (kind == PieceKind::kKnight && IsPost(journey.from, journey.to)) {
      const bool far = RelativeRank(side_, journey.to) >= 4 &&
                       Contains(facts_.Pawns(side_).attacks, journey.to);
      draft.promise += far ? kFarPostPromise : kPostPromise;
      draft.claims.push_back(ControlClaim(facts_, side_, journey.to));
    }
    if (kind == PieceKind::kKnight && IsRim(journey.from)) {
      draft.claims.push_back(
          SquaresClaim(ClaimKind::kKnightRim, side_, Bit(journey.from)));
    }
    if (kind == PieceKind::kBishop) {
      const Bitboard pawns = BadBishopPawns(facts_, side_, journey.from);
      if (pawns != 0 && RelativeRank(side_, journey.to) >= 3) {
        draft.claims.push_back(BadBishopClaim(side_, journey.from, pawns));
        draft.promise += kFreedBishopPromise;
      }
    }
    draft.claims.push_back(ScopeClaim(facts_, side_, journey.from));
  }

  const Outlook& outlook_;
  const Facts& facts_;
  const Side side_;
  const Bitboard chased_;
  const Bitboard posts_;      // for knights, where they are held there
  const Bitboard unguarded_;  // enemy pawns that no pawn guards
  Journey journeys_[16];
  int size_ = 0;
};

// Whether the pawn is one to blockade: isolated on the central files, past its
// own half, the square ahead of it empty.
bool AsksForBlockade(const Facts& facts, Side owner, Square pawn) {
  const Square stop = First(Forward(owner, Bit(pawn)));
  return Contains(Facts::kCentreFiles, pawn) &&
         RelativeRank(owner, pawn) >= 3 && facts.position().At(stop).empty() &&
         facts.Attackers(Other(owner), stop) != 0;
}

void OfferBlockade(const Outlook& outlook, Square pawn, BestDrafts& best) {
  const Facts& facts = outlook.facts;
  const Side side = outlook.side;
  const Square stop = First(Forward(outlook.enemy(), Bit(pawn)));
  const Bitboard knights = facts.Own(side, PieceKind::kKnight);
  const Bitboard bishops = facts.Own(side, PieceKind::kBishop) & ColourOf(stop);
  for (const Bitboard minors : {knights, bishops}) {
    for (const Square from : InOrder(side, minors)) {
      const bool knight = Contains(knights, from);
      const Reach reach(facts, from, kMostMoves);
      for (const SquareList& route : RoutesInOrder(reach, side, stop, 2)) {
        Draft draft;
        draft.kind = PlanKind::kRegroup;
        if (!PlayRoute(outlook.position, side, route, draft.moves)) continue;
        draft.targets = {stop, pawn};
        draft.promise = knight ? kKnightBlockade : kBishopBlockade;
        Claim blockade = BlockadeClaim(side, stop);
        blockade.line = WithPasses(outlook.position, side, draft.moves);
        draft.claims = {
            SquaresClaim(ClaimKind::kIsolated, outlook.enemy(), Bit(pawn)),
            blockade};
        best.Offer(draft, kLeastGain);
        break;
      }
    }
  }
}

void OfferBlockades(const Outlook& outlook, BestDrafts& best) {
  const Side owner = outlook.enemy();
  const PawnFacts& pawns = outlook.facts.Pawns(owner);
  for (const Square pawn :
       InOrder(owner, pawns.isolated & ~pawns.passed & ~pawns.doubled)) {
    if (AsksForBlockade(outlook.facts, owner, pawn)) {
      OfferBlockade(outlook, pawn, best);
    }
  }
}

// The bishop goes to where it hits the weak pawn and stands safely.
void OfferHit(const Outlook& outlook, Square bishop, Square pawn,
              BestDrafts& best) {
  const Facts& facts = outlook.facts;
  const Reach reach(facts, bishop, 1);
  const Bitboard ends = reach.NewAfter(1) &
                        BishopAttacks(pawn, facts.position().Occupied()) &
                        ~ChasedByPawns(facts, outlook.enemy());
  for (const Square end : InOrder(outlook.side, ends)) {
    Draft draft;
    draft.kind = PlanKind::kRegroup;
    const std::optional<Position> after =
        PlayRoute(outlook.position, outlook.side, {bishop, end}, draft.moves);
    if (!after.has_value()) continue;
    draft.targets = {end};
    draft.promise = kIdleBishopHits;
    Claim hit = ControlClaim(Facts(*after), outlook.side, pawn);
    hit.line = WithPasses(outlook.position, outlook.side, draft.moves);
    draft.claims = {hit};
    AddWeaknessClaims(facts, outlook.enemy(), pawn, draft.claims);
    draft.claims.push_back(ScopeClaim(facts, outlook.side, bishop));
    best.Offer(draft, kLeastGain);
    return;
  }
}

void OfferIdleBishops(const Outlook& outlook, BestDrafts& best) {
  const Facts& facts = outlook.facts;
  const Side side = outlook.side;
  const Bitboard bishops = facts.Own(side, PieceKind::kBishop) &
                           ~UndevelopedPieces(facts, side) &
                           ~facts.Pinned(side);
  if (bishops == 0) return;
  const Bitboard weak = FixedWeaknesses(facts, outlook.enemy());
  const Bitboard far = RelativeRankMask(side, 4) | RelativeRankMask(side, 5) |
                       RelativeRankMask(side, 6) | RelativeRankMask(side, 7);
  const Bitboard seen_for_good = far & ~facts.Pawns(outlook.enemy()).attacks;
  for (const Square bishop : InOrder(side, bishops)) {
    const Bitboard attacks = facts.Attacks(bishop);
    if (PopCount(attacks & seen_for_good) > kSeesNothing) continue;
    if ((attacks & weak) != 0) continue;
    for (const Square pawn : InOrder(outlook.enemy(), weak)) {
      OfferHit(outlook, bishop, pawn, best);
    }
  }
}

}  // namespace

void DraftRegroups(const Outlook& outlook, std::vector<Draft>& drafts) {
  if (outlook.facts.InCheck()) return;
  BestDrafts best(outlook);
  Regrouper(outlook).OfferTo(best);
  OfferBlockades(outlook, best);
  OfferIdleBishops(outlook, best);
  best.AddTo(drafts);
}

}  // namespace assay
