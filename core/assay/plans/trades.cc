// Trade: an exchange of like for like that leaves the side better off.
//
// The trade recommends it where the piece given is worse than the one got: the
// own bad bishop, one of the enemy's two bishops, the good one of them where
// the other is bad, the bishop beside the enemy king, the guard of a square
// wanted or of a central pawn under attack; where fewer pieces suit the side:
// ahead in pieces (not in pawns), or cramped; and queens come off where the own
// king is the less safe. Not recommended for its own sake, nor of the own good
// piece for a bad one.
//
// Each pair of like pieces that can meet is taken off the board, and the
// ledgers before and after are compared. The pair meets by a capture that can
// be taken back, or by a move of the own piece to a guarded square from which
// it attacks the other, a pawn stepping out of a bishop's way first.
#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/facts/kings.h"
#include "assay/facts/pieces.h"
#include "assay/facts/routes.h"
#include "assay/plans/best_drafts.h"

namespace assay {
namespace {

// Own moves until the pieces meet.
constexpr int kMostMoves = 2;
// Pairs that the ledgers are compared for.
constexpr int kMostPairs = 6;

// What the reasons are worth beyond the ledger, which sees a bad bishop's
// pawns, the pair and the squares of the pieces but not what the exchange
// makes possible. All own reasoning, on the scale of the weights.
// A bad bishop: the ledger counts its pawns and what it cannot reach; this is
// for the squares of their colour's opposite, which a good piece of the
// opponent's no longer holds.
constexpr Centipawns kBadBishop = 20;
// Kaufman 1999 gives the pair half a pawn; the ledger has what of it the
// structure leaves, so this is small: holding on to it grows with every pawn
// that goes.
constexpr Centipawns kBishopPair = 10;
// The opponent's good bishop, the guard of the squares that its pawns, on the
// other colour, do not guard: the ledger says nothing of them until a piece
// stands there. About what a piece settled on one of them is worth.
constexpr Centipawns kGoodBishop = 26;
// The bishop beside a castled king whose pawn made room for it: the squares
// around the king lose their guard. Own reasoning, a gap in a shelter (15 to
// 25).
constexpr Centipawns kFianchetto = 24;
// The guard of a central pawn that is attacked as often as it will then be
// guarded: a pawn to win or pieces tied down. Own reasoning, as for the guard
// of a square.
constexpr Centipawns kGuardOfPawn = 30;
// Attacked more often than it will then be guarded, it falls unless another
// guard comes in time: half of it and a little.
constexpr Centipawns kPawnLeft = 60;
// The guard of an outpost gone: the weight of an outpost that no minor piece
// contests, to be filled by the move after.
constexpr Centipawns kGuardOfSquare = 30;
// A piece or the exchange ahead: each trade brings the ending nearer.
constexpr Centipawns kAhead = 25;
constexpr Centipawns kAheadQueens = 40;
// Cramped: room for one piece more.
constexpr Centipawns kCramped = 12;
// The less safe king without queens on the board.
constexpr Centipawns kSafety = 20;
// Pieces ahead: at least the exchange.
constexpr int kAheadInPieces = 150;
// Squares of space fewer that make a cramped position, of 10 to 25 in all;
// and the minor pieces on the board below which there is room for all.
constexpr int kLessSpace = 6;
constexpr int kCrowdedMinors = 6;

constexpr Centipawns kLeastGain = 20;

bool IsMinor(PieceKind kind) {
  return kind == PieceKind::kKnight || kind == PieceKind::kBishop;
}

// Pieces of the side less the opponent's by exchange values, pawns left out.
int PiecesAhead(const Facts& facts, Side side) {
  int ahead = 0;
  for (const PieceKind kind : {PieceKind::kKnight, PieceKind::kBishop,
                               PieceKind::kRook, PieceKind::kQueen}) {
    ahead += ExchangeValue(kind) * (PopCount(facts.Own(side, kind)) -
                                    PopCount(facts.Own(Other(side), kind)));
  }
  return ahead;
}

// The position without the two pieces; none where that is none.
std::optional<Position> Without(const Position& position, Square a, Square b) {
  ParsedPosition parsed = position.ToParsed();
  parsed.board[a] = Piece();
  parsed.board[b] = Piece();
  parsed.en_passant = kNoSquare;
  return Position::FromParsed(parsed);
}

struct Pair {
  Square own = kNoSquare;
  Square other = kNoSquare;
  Centipawns promise = 0;      // of all the reasons
  Square guarded = kNoSquare;  // the square wanted, where that is a reason
  std::vector<Claim> reasons;
};

// The squares of the central files that the side wants for its pieces: own
// outposts and enemy holes it attacks, empty of its own.
Bitboard WantedSquares(const Facts& facts, Side side) {
  return (facts.Pawns(side).outposts & Facts::kCentreFiles) &
         ~facts.position().Pieces(Other(side));
}

class Trader {
 public:
  explicit Trader(const Outlook& outlook)
      : outlook_(outlook),
        facts_(outlook.facts),
        position_(outlook.position),
        side_(outlook.side),
        enemy_(outlook.enemy()),
        ahead_(PiecesAhead(facts_, side_) >= kAheadInPieces),
        cramped_(IsCramped()) {}

  void OfferTo(BestDrafts& best) {
    FindPairs();
    const std::size_t tried = std::min<std::size_t>(pairs_.size(), kMostPairs);
    std::partial_sort(
        pairs_.begin(), pairs_.begin() + static_cast<std::ptrdiff_t>(tried),
        pairs_.end(),
        [](const Pair& a, const Pair& b) { return a.promise > b.promise; });
    for (std::size_t i = 0; i < tried; ++i) Offer(pairs_[i], best);
  }

 private:
  bool IsCramped() const {
    const int own = PopCount(facts_.Space(side_));
    const int other = PopCount(facts_.Space(enemy_));
    const int minors = PopCount(position_.Pieces(PieceKind::kKnight) |
                                position_.Pieces(PieceKind::kBishop));
    return minors >= kCrowdedMinors && own + kLessSpace <= other;
  }

  void FindPairs() {
    const Bitboard kings = position_.Pieces(PieceKind::kKing);
    const Bitboard pawns = position_.Pieces(PieceKind::kPawn);
    const Bitboard pieces = ~(kings | pawns);
    for (const Square own : InOrder(side_, position_.Pieces(side_) & pieces)) {
      for (const Square other :
           InOrder(side_, position_.Pieces(enemy_) & pieces)) {
        const PieceKind mine = position_.At(own).kind();
        const PieceKind theirs = position_.At(other).kind();
        if (ExchangeValue(mine) != ExchangeValue(theirs)) continue;
        if (mine == PieceKind::kBishop && theirs == PieceKind::kBishop &&
            IsLight(own) != IsLight(other)) {
          continue;
        }
        Pair pair;
        pair.own = own;
        pair.other = other;
        GiveReasons(pair);
        if (pair.promise > 0) pairs_.push_back(pair);
      }
    }
  }

  void GiveReasons(Pair& pair) const {
    const auto give = [&pair](Centipawns promise, Claim claim) {
      pair.promise += promise;
      pair.reasons.push_back(std::move(claim));
    };
    const PieceKind mine = position_.At(pair.own).kind();
    const PieceKind theirs = position_.At(pair.other).kind();
    if (IsMinor(mine)) GiveMinorReasons(pair, give);
    if (mine == PieceKind::kQueen && IsLessSafe()) {
      give(kSafety, KingAttackersClaim(facts_, side_));
    }
    if (ahead_) {
      give(theirs == PieceKind::kQueen ? kAheadQueens : kAhead,
           MaterialClaim(facts_, side_, KindAhead()));
    }
  }

  template <class Give>
  void GiveMinorReasons(Pair& pair, const Give& give) const {
    const PieceKind mine = position_.At(pair.own).kind();
    const PieceKind theirs = position_.At(pair.other).kind();
    if (mine == PieceKind::kBishop) {
      const Bitboard pawns = BadBishopPawns(facts_, side_, pair.own);
      const bool same = theirs == PieceKind::kBishop &&
                        BadBishopPawns(facts_, enemy_, pair.other) != 0;
      if (pawns != 0 && !same) {
        give(kBadBishop, BadBishopClaim(side_, pair.own, pawns));
      }
      const Bitboard left = SquaresLeftTo(pair.other);
      if (theirs == PieceKind::kBishop && pawns == 0 && left != 0) {
        give(kGoodBishop, SquaresClaim(ClaimKind::kHole, enemy_,
                                       Bit(*InOrder(side_, left).begin())));
      }
      if (theirs == PieceKind::kBishop && HoldsCastle(enemy_, pair.other) &&
          !HoldsCastle(side_, pair.own) &&
          facts_.Own(side_, PieceKind::kQueen) != 0) {
        give(kFianchetto, FlankPawnMovedClaim(
                              enemy_, First(Forward(enemy_, Bit(pair.other)))));
      }
    }
    const Square pawn = PawnHeldBy(pair);
    if (pawn != kNoSquare) {
      const int attackers =
          PopCount(facts_.Attackers(side_, pawn) & ~Bit(pair.own));
      const int guards = PopCount(facts_.Attackers(enemy_, pawn)) - 1;
      give(attackers > guards ? kPawnLeft : kGuardOfPawn,
           ControlClaim(facts_, side_, pawn));
    }
    if (theirs == PieceKind::kBishop && HasBishopPair(facts_, enemy_) &&
        !HasBishopPair(facts_, side_)) {
      give(kBishopPair, BishopPairClaim(facts_, enemy_));
    }
    pair.guarded = SquareOnlyGuardedBy(pair);
    if (pair.guarded != kNoSquare) {
      give(kGuardOfSquare, ControlClaim(facts_, side_, pair.guarded));
    }
    if (cramped_) give(kCramped, SpaceClaim(facts_, side_));
  }

  // The enemy's central holes that only this bishop is made to guard: the
  // pawns of the central files stand on the other colour, all but one, and
  // one at least is rammed there.
  Bitboard SquaresLeftTo(Square bishop) const {
    const PawnFacts& pawns = facts_.Pawns(enemy_);
    const Bitboard colour = ColourOf(bishop);
    const Bitboard central = pawns.pawns & Facts::kCentreFiles;
    if (PopCount(central & ~colour) < 3 || PopCount(central & colour) > 1 ||
        (central & ~colour & pawns.rammed) == 0) {
      return 0;
    }
    return pawns.holes & colour & Facts::kCentreFiles;
  }

  // Whether the bishop stands beside its castled king where the pawn before it
  // made room by one step.
  bool HoldsCastle(Side owner, Square bishop) const {
    return IsCastled(facts_, owner) &&
           Contains(facts_.KingNeighbourhood(owner), bishop) &&
           RelativeRank(owner, bishop) == 1 &&
           (MovedFlankPawns(facts_, owner) & Forward(owner, Bit(bishop))) != 0;
  }

  // A central pawn that no pawn guards and that has as many attackers, the
  // piece given left out, as guards once the other is gone.
  Square PawnHeldBy(const Pair& pair) const {
    const PawnFacts& pawns = facts_.Pawns(enemy_);
    for (const Square pawn :
         InOrder(side_, facts_.Attacks(pair.other) & pawns.pawns &
                            ~pawns.attacks & Facts::kCentreFiles)) {
      const int attackers =
          PopCount(facts_.Attackers(side_, pawn) & ~Bit(pair.own));
      const int guards = PopCount(facts_.Attackers(enemy_, pawn)) - 1;
      if (attackers >= 2 && attackers >= guards) return pawn;
    }
    return kNoSquare;
  }

  // A square wanted that the piece got contests, and that more own minor
  // pieces than enemy ones can come to once both are gone: a piece that could
  // not fight for the square goes for one that did, or the only one that did
  // goes.
  Square SquareOnlyGuardedBy(const Pair& pair) const {
    for (const Square square : InOrder(side_, WantedSquares(facts_, side_))) {
      if (!Contains(facts_.Attacks(pair.other), square)) continue;
      const Bitboard theirs =
          OutpostContesters(facts_, side_, square) & ~Bit(pair.other);
      const Bitboard ours =
          OutpostContesters(facts_, enemy_, square) & ~Bit(pair.own);
      const Bitboard knights = ours & facts_.Own(side_, PieceKind::kKnight);
      if (knights != 0 && PopCount(ours) > PopCount(theirs)) return square;
    }
    return kNoSquare;
  }

  // More enemy pieces at the own king than own ones at theirs, two at least.
  bool IsLessSafe() const {
    const int at_own = PopCount(KingAttackers(facts_, side_));
    const int at_other = PopCount(KingAttackers(facts_, enemy_));
    return at_own >= 2 && at_own > at_other &&
           ShelterGaps(facts_, side_) >= ShelterGaps(facts_, enemy_);
  }

  PieceKind KindAhead() const {
    for (const PieceKind kind : {PieceKind::kQueen, PieceKind::kRook,
                                 PieceKind::kBishop, PieceKind::kKnight}) {
      if (PopCount(facts_.Own(side_, kind)) >
          PopCount(facts_.Own(enemy_, kind))) {
        return kind;
      }
    }
    return PieceKind::kQueen;
  }

  void Offer(const Pair& pair, BestDrafts& best) const {
    Draft draft;
    draft.kind = PlanKind::kTrade;
    draft.moves = MovesToMeet(pair);
    if (draft.moves.empty()) return;
    // Who goes to the square whose guard is to be traded is there already: to
    // stay, not to be traded.
    if (draft.moves.back().to() == pair.guarded) return;
    const auto without = Without(position_, pair.own, pair.other);
    if (!without.has_value()) return;
    const Centipawns better =
        outlook_.Score(*without) - outlook_.Score(position_);
    // Losing what the position lives on is not paid for by a reason.
    if (better < -pair.promise) return;
    const std::optional<Centipawns> seen = GainAlone(outlook_, draft.moves);
    if (!seen.has_value()) return;
    const Centipawns worth = std::min(better, kMostSeen) + pair.promise;
    if (worth < kLeastGain) return;
    // The gain alone has the piece taken and not yet taken back, or the own
    // piece on its way: the promise sets that right, so that the two together
    // are what the exchange brings.
    draft.promise = worth - *seen;
    draft.targets = {pair.other};
    draft.claims = pair.reasons;
    best.Offer(draft, kLeastGain);
  }

  // By a capture that can be taken back for no loss, else by going where the
  // other is attacked.
  std::vector<Move> MovesToMeet(const Pair& pair) const {
    if (Contains(facts_.Attacks(pair.own), pair.other)) return Capture(pair);
    std::vector<Move> moves = Approach(pair);
    if (moves.empty() && BadBishopPawns(facts_, side_, pair.own) != 0) {
      moves = ApproachAfterStep(pair);
    }
    return moves;
  }

  std::vector<Move> Capture(const Pair& pair) const {
    // What hangs is won, not traded.
    if (ExchangeValueOf(facts_, pair.other) > 0) return {};
    const Move move = FindMove(position_, side_, pair.own, pair.other);
    if (move.is_null()) return {};
    return {move};
  }

  // Where the piece attacks the other and stands safely.
  std::vector<Move> Approach(const Pair& pair) const {
    const PieceKind kind = position_.At(pair.own).kind();
    const Bitboard ends =
        PieceAttacks(kind, pair.other, position_.Occupied() & ~Bit(pair.own)) &
        ~position_.Occupied();
    const Reach reach(facts_, pair.own, kMostMoves);
    for (int moves = 1; moves <= kMostMoves; ++moves) {
      for (const Square end : InOrder(side_, reach.NewAfter(moves) & ends)) {
        // Guarded, where the other can take it: likes attack each other.
        const bool guarded =
            (position_.Attackers(side_, end,
                                 position_.Occupied() & ~Bit(pair.own)) &
             ~Bit(pair.own)) != 0;
        if (!guarded && position_.At(pair.other).kind() == kind) continue;
        for (const SquareList& route : RoutesInOrder(reach, side_, end, 2)) {
          std::vector<Move> found;
          if (PlayRoute(position_, side_, route, found).has_value()) {
            return found;
          }
        }
      }
    }
    return {};
  }

  // A pawn's single step or a knight's move that opens the bishop's way to
  // where it attacks the other.
  std::vector<Move> ApproachAfterStep(const Pair& pair) const {
    const Bitboard near = BishopAttacks(pair.own, 0) & KingAttacks(pair.own);
    for (const Square pawn : InOrder(side_, near & facts_.Pawns(side_).pawns)) {
      std::vector<Move> moves =
          ApproachAfter(pair, {pawn, First(Forward(side_, Bit(pawn)))});
      if (!moves.empty()) return moves;
    }
    for (const Square knight :
         InOrder(side_, near & facts_.Own(side_, PieceKind::kKnight))) {
      for (const Square to :
           InOrder(side_, facts_.Attacks(knight) & ~position_.Occupied())) {
        std::vector<Move> moves = ApproachAfter(pair, {knight, to});
        if (!moves.empty()) return moves;
      }
    }
    return {};
  }

  std::vector<Move> ApproachAfter(const Pair& pair,
                                  const SquareList& step) const {
    std::vector<Move> moves;
    const auto after = PlayRoute(position_, side_, step, moves);
    if (!after.has_value()) return {};
    const Bitboard occupied = after->Occupied();
    const Bitboard ends = BishopAttacks(pair.own, occupied) &
                          BishopAttacks(pair.other, occupied) & ~occupied;
    for (const Square end : InOrder(side_, ends)) {
      std::vector<Move> longer = moves;
      if (PlayRoute(*after, side_, {pair.own, end}, longer)) return longer;
    }
    return {};
  }

  // What the ledgers may say for an exchange: more than this is a piece that
  // was doomed, which is tactics and not a trade.
  static constexpr Centipawns kMostSeen = 60;

  const Outlook& outlook_;
  const Facts& facts_;
  const Position& position_;
  const Side side_;
  const Side enemy_;
  const bool ahead_;
  const bool cramped_;
  std::vector<Pair> pairs_;
};

}  // namespace

void DraftTrades(const Outlook& outlook, std::vector<Draft>& drafts) {
  if (outlook.facts.InCheck()) return;
  BestDrafts best(outlook);
  Trader(outlook).OfferTo(best);
  best.AddTo(drafts);
}

}  // namespace assay
