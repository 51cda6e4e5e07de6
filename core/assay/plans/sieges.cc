// Siege: pieces gather against a weakness that cannot run away.
//
// The trade recommends it (Nimzowitsch, My System, 1925: restrain, blockade,
// destroy) against a pawn that no pawn can ever guard and that cannot step
// forward: isolated, backward on a half-open file, the front one of doubled
// pawns, one of a hanging pair, the base of a locked chain. It succeeds where
// more attackers can come than defenders. Not recommended against a pawn that
// can still be guarded by a pawn or run, or where the defenders are as quick.
//
// Pieces bear on a target also through own pieces that move on the same line.
// They are brought up the quickest first, minor pieces before rooks, until
// captures on the target gain something.
#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/facts/exchange.h"
#include "assay/facts/pawn_groups.h"
#include "assay/facts/routes.h"
#include "assay/facts/siege.h"
#include "assay/plans/best_drafts.h"
#include "assay/plans/weaknesses.h"

namespace assay {
namespace {

// The own moves that a siege may take, and those of one piece in it.
constexpr int kMostMoves = 4;
constexpr int kMostMovesOfOne = 3;
// Targets looked at closely, the likeliest first: a side has few.
constexpr int kMostTargets = 4;

// The pawn falls if nothing is done, and as many defenders do not come in
// time: half a pawn, since pieces tied down weigh as well. Own reasoning.
constexpr Centipawns kOutnumbered = 45;
// As many defenders as attackers can come, but they have to: the ledger's
// attack on the pawn is what tying down a piece is worth, and no more.
constexpr Centipawns kTiesDown = 0;
// The same against a pawn isolated, backward or one of a hanging pair on a
// half-open file, doubled, or the base of a locked chain: the weakness stays,
// and so does the duty to guard it. Half of the first.
constexpr Centipawns kTiesDownForGood = 24;
// Below this, pieces have better to do.
constexpr Centipawns kLeastSiege = 24;

// Whether the pawn stands beside its king with queens on: to take it is an
// attack on the king, a plan of its own.
bool Shelters(const Facts& facts, Side owner, Square pawn) {
  return facts.position().Pieces(PieceKind::kQueen) != 0 &&
         Contains(facts.KingNeighbourhood(owner), pawn);
}

// A piece that bears on a target or can come to, and to which squares.
struct Recruit {
  Square from = kNoSquare;
  int moves = 0;
  Bitboard ends = 0;
};

struct Recruits {
  Recruit list[16];
  int size = 0;

  // How many bear on the target after at most so many moves in all.
  int Within(int moves) const {
    int count = 0;
    for (int i = 0; i < size; ++i) {
      moves -= list[i].moves;
      if (moves < 0) break;
      ++count;
    }
    return count;
  }
};

// From where a piece bears on the target, own pieces of its line in between
// or not.
class Bearings {
 public:
  Bearings(const Facts& facts, Side side, Square target) : target_(target) {
    const Position& position = facts.position();
    const Bitboard queens = facts.Own(side, PieceKind::kQueen);
    const Bitboard rooks = facts.Own(side, PieceKind::kRook) | queens;
    const Bitboard bishops = facts.Own(side, PieceKind::kBishop) | queens;
    along_ = RookAttacks(target, position.Occupied() & ~rooks);
    across_ = BishopAttacks(target, position.Occupied() & ~bishops);
    pawns_ = PawnAttacks(Other(side), target);
  }
  Bitboard Of(PieceKind kind) const {
    switch (kind) {
      case PieceKind::kPawn:
        return pawns_;
      case PieceKind::kKnight:
        return KnightAttacks(target_);
      case PieceKind::kBishop:
        return across_;
      case PieceKind::kRook:
        return along_;
      case PieceKind::kQueen:
        return along_ | across_;
      default:
        return KingAttacks(target_);
    }
  }

 private:
  const Square target_;
  Bitboard along_ = 0;
  Bitboard across_ = 0;
  Bitboard pawns_ = 0;
};

bool ComesBefore(const Position& position, const Recruit& a, const Recruit& b) {
  if (a.moves != b.moves) return a.moves < b.moves;
  return ExchangeValue(position.At(a.from).kind()) <
         ExchangeValue(position.At(b.from).kind());
}

// A piece that is already bound to another square ahead of it or cannot move:
// pawns and pinned pieces bear or do not.
bool CanWalk(const Facts& facts, Side side, Square square) {
  const PieceKind kind = facts.position().At(square).kind();
  return kind != PieceKind::kPawn && kind != PieceKind::kKing &&
         !Contains(facts.Pinned(side), square);
}

// The own rook or queen that bears on the target along its file and can step
// up it to make room for a rook beside it; kNoSquare where there is none.
Square FrontOfFile(const Facts& facts, Side side, Square rook, Square target) {
  const Position& position = facts.position();
  if (position.At(rook).kind() != PieceKind::kRook) return kNoSquare;
  const Bitboard heavy =
      facts.Own(side, PieceKind::kRook) | facts.Own(side, PieceKind::kQueen);
  const Bitboard fronts = heavy & FileMask(FileOf(target)) &
                          RankMask(RankOf(rook)) & facts.Attacks(rook) &
                          facts.Attackers(side, target) & ~facts.Pinned(side);
  return fronts == 0 ? kNoSquare : First(fronts);
}

// Stepping up and moving in behind.
constexpr int kMovesToDouble = 2;

Recruit RecruitFrom(const Facts& facts, Square square, Bitboard ends) {
  const Reach reach(facts, square, kMostMovesOfOne);
  for (int moves = 1; moves <= kMostMovesOfOne; ++moves) {
    if ((reach.NewAfter(moves) & ends) != 0) {
      return {square, moves, reach.NewAfter(moves) & ends};
    }
  }
  return {};
}

Recruits Gather(const Facts& facts, Side side, Square target) {
  const Position& position = facts.position();
  const Bearings bearings(facts, side, target);
  Recruits gathered;
  for (const Square square :
       InOrder(side, position.Pieces(side) & ~Bit(target))) {
    const PieceKind kind = position.At(square).kind();
    const Bitboard ends = bearings.Of(kind);
    Recruit recruit{square, 0, Bit(square)};
    if (!Contains(ends, square)) {
      if (!CanWalk(facts, side, square)) continue;
      if (kind == PieceKind::kBishop && (ColourOf(square) & Bit(target)) == 0) {
        continue;
      }
      recruit = RecruitFrom(facts, square, ends & ~Bit(target));
      const Square front = FrontOfFile(facts, side, square, target);
      if (front != kNoSquare &&
          (recruit.from == kNoSquare || recruit.moves > kMovesToDouble)) {
        recruit = {square, kMovesToDouble, Bit(front)};
      }
      if (recruit.from == kNoSquare) continue;
    }
    int at = gathered.size++;
    for (; at > 0 && ComesBefore(position, recruit, gathered.list[at - 1]);
         --at) {
      gathered.list[at] = gathered.list[at - 1];
    }
    gathered.list[at] = recruit;
  }
  return gathered;
}

// Squares between the target and the own sliders that bear on it: another
// piece is not to stand there.
Bitboard LinesInUse(const Facts& facts, Side side, Square target) {
  const Position& position = facts.position();
  const Bitboard sliders =
      position.Pieces(side) &
      (position.Pieces(PieceKind::kBishop) | position.Pieces(PieceKind::kRook) |
       position.Pieces(PieceKind::kQueen));
  Bitboard lines = 0;
  for (const Square square : Each(facts.Attackers(side, target) & sliders)) {
    lines |= Between(square, target);
  }
  return lines;
}

// The pieces and pawns of the side that bear on the square, also those behind
// others of its own on the same line.
Bitboard BearingOn(const Position& position, Side side, Square target) {
  Bitboard bearing = 0;
  Bitboard occupied = position.Occupied();
  while (true) {
    const Bitboard more =
        position.Attackers(side, target, occupied) & occupied & ~bearing;
    if (more == 0) return bearing;
    bearing |= more;
    occupied &= ~more;
  }
}

class Besieger {
 public:
  Besieger(const Outlook& outlook, Square target)
      : outlook_(outlook),
        target_(target),
        ours_(Gather(outlook.facts, outlook.side, target)),
        theirs_(Gather(outlook.facts, outlook.enemy(), target)) {}

  void OfferTo(BestDrafts& best) {
    // Heads first: what cannot come in numbers is not played out.
    if (ours_.Within(kMostMoves) < std::max(1, theirs_.Within(1))) return;
    Position at = outlook_.position;
    std::vector<Move> moves;
    Bitboard kept_clear = LinesInUse(outlook_.facts, outlook_.side, target_);
    for (int i = 0; i < ours_.size; ++i) {
      const Recruit& recruit = ours_.list[i];
      if (recruit.moves == 0) continue;
      if (static_cast<int>(moves.size()) + recruit.moves > kMostMoves) continue;
      // A piece that moved up may have opened the line for it.
      if (Contains(BearingOn(at, outlook_.side, target_), recruit.from)) {
        continue;
      }
      if (!Bring(recruit, at, moves, kept_clear)) continue;
      const int bearing = PopCount(BearingOn(at, outlook_.side, target_));
      const int defenders = theirs_.Within(static_cast<int>(moves.size()));
      // One against one is an attack on a pawn, not a siege.
      if (bearing == 1 && defenders > 0) continue;
      if (bearing < defenders && !Stays()) continue;
      // A long journey only to be met is not worth making.
      if (bearing <= defenders && recruit.moves == kMostMovesOfOne) continue;
      // Captures need not win it yet: what is weak for good is besieged for the
      // guards that it takes.
      const bool ties_down = Stays() && bearing >= std::max(2, defenders);
      if (!ties_down && ExchangeValueOf(at, target_) == 0) continue;
      Offer(moves, PromiseOf(bearing, defenders), best);
      if (bearing > defenders) return;
    }
  }

 private:
  bool Bring(const Recruit& recruit, Position& at, std::vector<Move>& moves,
             Bitboard& kept_clear) const {
    if ((recruit.ends & outlook_.position.Pieces(outlook_.side)) != 0) {
      return Double(recruit, at, moves, kept_clear);
    }
    const Bitboard chased = ChasedByPawns(outlook_.facts, outlook_.enemy());
    Bitboard ends = recruit.ends & ~kept_clear & ~at.Pieces(outlook_.side);
    if ((ends & ~chased) != 0) ends &= ~chased;
    const Reach reach(outlook_.facts, recruit.from, recruit.moves);
    int tries = 4;
    for (const Square end : InOrder(outlook_.side, ends)) {
      for (const SquareList& route :
           RoutesInOrder(reach, outlook_.side, end, 2)) {
        if (tries-- == 0) return false;
        std::vector<Move> longer = moves;
        const std::optional<Position> after =
            PlayRoute(at, outlook_.side, route, longer);
        if (!after.has_value()) continue;
        at = *after;
        moves = longer;
        kept_clear |= Bit(end) | Between(end, target_);
        return true;
      }
    }
    return false;
  }

  // The front piece steps up the file, the rook comes behind it.
  bool Double(const Recruit& recruit, Position& at, std::vector<Move>& moves,
              Bitboard& kept_clear) const {
    const Square front = First(recruit.ends);
    if (at.At(front) != outlook_.position.At(front)) return false;
    for (const Square step :
         InOrder(outlook_.side, Between(front, target_) & ~at.Occupied())) {
      std::vector<Move> longer = moves;
      std::optional<Position> after =
          PlayRoute(at, outlook_.side, {front, step}, longer);
      if (!after.has_value()) continue;
      after = PlayRoute(*after, outlook_.side, {recruit.from, front}, longer);
      if (!after.has_value()) continue;
      at = *after;
      moves = longer;
      kept_clear |= Bit(step) | Between(front, target_);
      return true;
    }
    return false;
  }

  // Whether no advance or exchange of pawns is likely to rid the owner of the
  // weakness: the duty to guard it stays, too.
  bool Stays() const {
    const PawnFacts& pawns = outlook_.facts.Pawns(outlook_.enemy());
    const Bitboard open = outlook_.facts.HalfOpenFiles(outlook_.side);
    const Bitboard on_open_files =
        (pawns.isolated | pawns.backward |
         HangingPair(outlook_.facts, outlook_.enemy())) &
        open;
    return Contains(on_open_files | pawns.doubled | pawns.chain_bases, target_);
  }

  Centipawns PromiseOf(int bearing, int defenders) const {
    if (bearing > defenders) return kOutnumbered;
    return Stays() ? kTiesDownForGood : kTiesDown;
  }

  void Offer(const std::vector<Move>& moves, Centipawns promise,
             BestDrafts& best) const {
    Draft draft;
    draft.kind = PlanKind::kSiege;
    draft.moves = moves;
    draft.targets = {target_};
    draft.promise = promise;
    AddClaims(draft);
    best.Offer(draft, kLeastSiege);
  }

  void AddClaims(Draft& draft) const {
    const Facts& facts = outlook_.facts;
    AddWeaknessClaims(facts, outlook_.enemy(), target_, draft.claims);
    const Claim siege = SiegeCountClaim(facts, outlook_.side, target_,
                                        static_cast<int>(draft.moves.size()));
    // The claim's count knows no pieces behind others: where it does not tell
    // the siege, it is left out.
    if (siege.count > siege.other_count) draft.claims.push_back(siege);
    if (Contains(facts.HalfOpenFiles(outlook_.side), target_)) {
      draft.claims.push_back(HalfOpenFileClaim(outlook_.side, FileOf(target_)));
    }
  }

  const Outlook& outlook_;
  const Square target_;
  const Recruits ours_;
  const Recruits theirs_;
};

}  // namespace

void DraftSieges(const Outlook& outlook, std::vector<Draft>& drafts) {
  const Side owner = outlook.enemy();
  const Facts& facts = outlook.facts;
  const Bitboard weak = FixedWeaknesses(facts, owner);
  if (weak == 0) return;
  BestDrafts best(outlook);
  int left = kMostTargets;
  for (const Square pawn : InOrder(owner, weak)) {
    if (Shelters(facts, owner, pawn)) continue;
    if (ExchangeValueOf(facts, pawn) > 0) continue;  // it hangs already
    if (left-- == 0) break;
    Besieger(outlook, pawn).OfferTo(best);
  }
  best.AddTo(drafts);
}

}  // namespace assay
