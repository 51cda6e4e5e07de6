// King walk: in an ending the king goes where it works.
//
// The trade recommends it once the queens are off and few pieces are left:
// the king in front of the enemy passed pawn, beside the own one, to pawns
// that no pawn guards, else to the centre, or as near to it as nothing attacks
// it where pawns and pieces hold the centre. Not recommended while enough
// pieces remain to hunt it, nor where it stands where it works already.
//
// The king walks over squares that no enemy piece attacks now.
#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/plans/best_drafts.h"

namespace assay {
namespace {

// A pair of rooks and two pairs of minor pieces, or less: facts.phase() of
// 2,300 pieces' worth. Common practice for when the king may come out.
constexpr int kLatestPhase = 40;
constexpr int kMostMoves = 4;

// What a king on its best square is worth beyond the ledger, which knows of
// kings only by passed pawns. Own reasoning: the king's fighting value is
// about a minor piece's (Em. Lasker 1934: four pawns), spread over the width
// of the board: a tenth of a pawn or so for each step to its work.
constexpr Centipawns kPerStepToPawn = 12;
constexpr Centipawns kPerStepToPasser = 15;
constexpr Centipawns kPerStepToCentre = 8;
constexpr Centipawns kLeastGain = 16;

constexpr Bitboard kCentre = Bit(kD4) | Bit(kE4) | Bit(kD5) | Bit(kE5);

// Distances to the four squares of the centre in all.
int Away(Square square) {
  int away = 0;
  for (const Square centre : Each(kCentre)) {
    away += KingDistance(square, centre);
  }
  return away;
}
// A step nearer to each of them.
constexpr int kLeastNearer = 4;

struct Goal {
  Bitboard squares = 0;  // where the king does the work
  Square aim = kNoSquare;
  Centipawns per_step = 0;
};

// Layers of squares that the king first reaches in so many moves.
class Walk {
 public:
  Walk(const Facts& facts, Side side) : side_(side) {
    const Position& position = facts.position();
    // The king's own square hides what is behind it from sliders; PlayRoute()
    // finds that out. Pieces in the way will not wait to be taken.
    Bitboard barred = position.Occupied() | facts.Attacked(Other(side));
    barred |= KingAttacks(position.King(Other(side)));
    layers_[0] = Bit(position.King(side));
    Bitboard seen = layers_[0];
    for (int moves = 1; moves <= kMostMoves; ++moves) {
      Bitboard next = 0;
      for (const Square square : Each(layers_[moves - 1])) {
        next |= KingAttacks(square);
      }
      layers_[moves] = next & ~barred & ~seen;
      seen |= layers_[moves];
    }
  }

  // Fewest moves to one of the squares; -1 where it takes too many.
  int MovesTo(Bitboard squares) const {
    for (int moves = 0; moves <= kMostMoves; ++moves) {
      if ((layers_[moves] & squares) != 0) return moves;
    }
    return -1;
  }

  // The reached square nearest to the centre, of equals the soonest.
  Square NearestToCentre() const {
    Square best = First(layers_[0]);
    for (int moves = 1; moves <= kMostMoves; ++moves) {
      const Square square = MostCentral(layers_[moves]);
      if (square != kNoSquare && Away(square) < Away(best)) best = square;
    }
    return best;
  }

  // A shortest way, start included, through the middle where there is a
  // choice.
  SquareList WayTo(Bitboard squares, int moves) const {
    Square at = MostCentral(layers_[moves] & squares);
    Square backwards[kMostMoves + 1];
    for (int i = moves; i > 0; --i) {
      backwards[i] = at;
      at = MostCentral(layers_[i - 1] & KingAttacks(at));
    }
    backwards[0] = at;
    SquareList way;
    for (int i = 0; i <= moves; ++i) way.Add(backwards[i]);
    return way;
  }

 private:
  Square MostCentral(Bitboard squares) const {
    Square best = kNoSquare;
    int least = 99;
    for (const Square square : InOrder(side_, squares)) {
      const int away = Away(square);
      if (away < least) {
        least = away;
        best = square;
      }
    }
    return best;
  }

  const Side side_;
  Bitboard layers_[kMostMoves + 1] = {};
};

Bitboard Beside(Square square) { return KingAttacks(square); }

class Walker {
 public:
  explicit Walker(const Outlook& outlook)
      : outlook_(outlook),
        facts_(outlook.facts),
        side_(outlook.side),
        walk_(outlook.facts, outlook.side) {}

  void OfferTo(BestDrafts& best) const {
    OfferPassers(best);
    OfferWeakPawns(best);
    OfferCentre(best);
  }

 private:
  void OfferPassers(BestDrafts& best) const {
    const Side enemy = outlook_.enemy();
    for (const Square pawn : InOrder(side_, facts_.Pawns(enemy).passed)) {
      if (RelativeRank(enemy, pawn) < 3) continue;
      const Bitboard stop = Forward(enemy, Bit(pawn));
      // One that promotes first is not to be caught like this.
      if (walk_.MovesTo(stop) > 7 - RelativeRank(enemy, pawn)) continue;
      Offer({stop, pawn, kPerStepToPasser}, ClaimKind::kPassed, enemy, best);
    }
    for (const Square pawn : InOrder(side_, facts_.Pawns(side_).passed)) {
      if (RelativeRank(side_, pawn) < 2) continue;
      // Ahead of it or beside its stop square it clears the way.
      const Square stop = First(Forward(side_, Bit(pawn)));
      const Bitboard helps = Beside(stop) & ~RearSpan(side_, Bit(stop)) &
                             FillForward(side_, RankMask(RankOf(pawn)));
      Offer({helps, pawn, kPerStepToPasser}, ClaimKind::kPassed, side_, best);
    }
  }

  void OfferWeakPawns(BestDrafts& best) const {
    const Side enemy = outlook_.enemy();
    const PawnFacts& pawns = facts_.Pawns(enemy);
    for (const Square pawn :
         InOrder(side_, pawns.pawns & ~pawns.attack_span & ~pawns.passed)) {
      const bool isolated = Contains(pawns.isolated, pawn);
      const bool backward = Contains(pawns.backward, pawn);
      if (!isolated && !backward) continue;
      Offer({Beside(pawn), pawn, kPerStepToPawn},
            isolated ? ClaimKind::kIsolated : ClaimKind::kBackward, enemy,
            best);
    }
  }

  void OfferCentre(BestDrafts& best) const {
    const Square king = facts_.position().King(side_);
    Square nearest = Relative(side_, kD4);
    for (const Square centre : InOrder(side_, kCentre)) {
      if (KingDistance(king, centre) < KingDistance(king, nearest)) {
        nearest = centre;
      }
    }
    // One step from the centre it stands well enough.
    if (KingDistance(king, nearest) < 2) return;
    if (walk_.MovesTo(kCentre) >= 0) {
      Offer({kCentre, nearest, kPerStepToCentre}, ClaimKind::kUnspecified,
            side_, best);
      return;
    }
    // Pawns and pieces hold the centre itself: as near to it as is safe.
    const Square nearer = walk_.NearestToCentre();
    if (Away(king) - Away(nearer) < kLeastNearer) return;
    Offer({Bit(nearer), nearer, kPerStepToCentre}, ClaimKind::kUnspecified,
          side_, best);
  }

  // `reason`: what is said of the square aimed at, of the owner of what
  // stands there.
  void Offer(const Goal& goal, ClaimKind reason, Side owner,
             BestDrafts& best) const {
    const int moves = walk_.MovesTo(goal.squares);
    // One move's step is no walk, save to hold a passed pawn.
    const bool holds = reason == ClaimKind::kPassed && owner != side_;
    if (moves < (holds ? 1 : 2)) return;
    const SquareList way = walk_.WayTo(goal.squares, moves);
    Draft draft;
    draft.kind = PlanKind::kKingWalk;
    if (!PlayRoute(outlook_.position, side_, way, draft.moves)) return;
    draft.targets = {goal.aim};
    draft.promise = goal.per_step * moves;
    if (reason != ClaimKind::kUnspecified) {
      draft.claims.push_back(SquaresClaim(reason, owner, Bit(goal.aim)));
    }
    draft.claims.push_back(KingDistanceClaim(facts_, side_, goal.aim));
    best.Offer(draft, kLeastGain);
  }

  const Outlook& outlook_;
  const Facts& facts_;
  const Side side_;
  const Walk walk_;
};

// No queens, and few enough pieces that the king is safe among them.
bool IsTimeForKings(const Facts& facts) {
  return facts.position().Pieces(PieceKind::kQueen) == 0 &&
         facts.phase() <= kLatestPhase;
}

}  // namespace

void DraftKingWalks(const Outlook& outlook, std::vector<Draft>& drafts) {
  if (!IsTimeForKings(outlook.facts) || outlook.facts.InCheck()) return;
  BestDrafts best(outlook);
  Walker(outlook).OfferTo(best);
  best.AddTo(drafts);
}

}  // namespace assay
