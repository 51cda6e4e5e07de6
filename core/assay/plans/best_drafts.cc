#include "assay/plans/best_drafts.h"

#include <algorithm>
#include <utility>

#include "assay/plans/stops.h"

namespace assay {
namespace {

// What a plan keeps of its worth for each move that it takes: the opponent
// has as many.
constexpr double kKeptPerMove = 0.9;

// What the ledger sees beyond this at the end of a quiet plan is a threat that
// the opponent, passing, did not parry: a fork or a piece attacked.
constexpr Centipawns kMostInAll = 100;

// More shortest routes than a piece has in three moves, but for queens.
constexpr std::size_t kMostRoutesAsked = 24;

double Discounted(Centipawns gain, std::size_t moves) {
  double worth = gain;
  for (std::size_t i = 0; i < moves; ++i) worth *= kKeptPerMove;
  return worth;
}

// Squares that the given pawns of the enemy could attack by one advance, those
// left out where the other side's pawns take them.
Bitboard ChasedBy(const Facts& facts, Side enemy, Bitboard pawns) {
  const Bitboard empty = ~facts.position().Occupied();
  const Bitboard once = Forward(enemy, pawns) & empty;
  const Bitboard twice =
      Forward(enemy, once & RelativeRankMask(enemy, 2)) & empty;
  return PawnAttacks(enemy,
                     (once | twice) & ~facts.Pawns(Other(enemy)).attacks);
}

// Pawns beside a castled king, but for those of the edge, which it can spare,
// while there is a queen to come in.
Bitboard BoundToKing(const Facts& facts, Side owner) {
  const Square king = facts.position().King(owner);
  if (facts.Own(Other(owner), PieceKind::kQueen) == 0) return 0;
  if (RelativeRank(owner, king) != 0) return 0;
  if (FileOf(king) == 3 || FileOf(king) == 4) return 0;
  return KingAttacks(king) & facts.Pawns(owner).pawns &
         ~(FileMask(0) | FileMask(7));
}

// Pawns that alone guard a neighbour on a half-open file.
Bitboard BoundToNeighbour(const Facts& facts, Side owner) {
  const PawnFacts& pawns = facts.Pawns(owner);
  const Bitboard exposed = pawns.pawns & pawns.attacks & ~pawns.attacked_twice &
                           facts.HalfOpenFiles(Other(owner));
  return PawnAttacks(Other(owner), exposed) & pawns.pawns;
}

Square AimOf(const Draft& draft) {
  return draft.targets.empty() ? kNoSquare : draft.targets[0];
}

}  // namespace

bool FirstStepIsSound(const Outlook& outlook, Move move) {
  const Position before = outlook.position.side_to_move() == outlook.side
                              ? outlook.position
                              : outlook.position.AfterPass();
  const int taken = ExchangeValue(before.At(move.to()).kind());
  const Position after = before.After(move);
  const int hanging = MostHanging(after, outlook.side);
  if (hanging == 0) return true;
  return hanging <= taken + MostHanging(outlook.position, outlook.side);
}

std::optional<Position> PlayRoute(const Position& position, Side side,
                                  const SquareList& route,
                                  std::vector<Move>& moves) {
  Position at = position;
  for (std::size_t i = 1; i < route.size(); ++i) {
    if (!at.At(route[i]).empty()) return std::nullopt;
    const Move move = FindMove(at, side, route[i - 1], route[i]);
    if (move.is_null()) return std::nullopt;
    if (at.side_to_move() != side) at = at.AfterPass();
    at = at.After(move);
    if (!StandsSafely(at, route[i])) return std::nullopt;
    moves.push_back(move);
  }
  return at;
}

Bitboard ChasedByPawns(const Facts& facts, Side enemy) {
  return ChasedBy(facts, enemy, facts.Pawns(enemy).pawns);
}

Bitboard ChasedFreely(const Facts& facts, Side enemy) {
  const Bitboard bound =
      BoundToKing(facts, enemy) | BoundToNeighbour(facts, enemy);
  return ChasedBy(facts, enemy, facts.Pawns(enemy).pawns & ~bound);
}

SquareSequence InOrder(Side side, Bitboard set) {
  SquareSequence sequence;
  for (const Square square :
       Each(side == Side::kWhite ? set : FlipRanks(set))) {
    sequence.squares[sequence.size++] = Relative(side, square);
  }
  return sequence;
}

std::vector<SquareList> RoutesInOrder(const Reach& reach, Side side,
                                      Square goal, std::size_t most) {
  std::vector<SquareList> routes = reach.RoutesTo(goal, kMostRoutesAsked);
  const auto comes_before = [side](Square a, Square b) {
    return Relative(side, a) < Relative(side, b);
  };
  std::sort(routes.begin(), routes.end(),
            [&](const SquareList& a, const SquareList& b) {
              return std::lexicographical_compare(a.begin(), a.end(), b.begin(),
                                                  b.end(), comes_before);
            });
  if (routes.size() > most) routes.resize(most);
  return routes;
}

void BestDrafts::Offer(Draft draft, Centipawns least) {
  const std::optional<Centipawns> gain = GainAlone(outlook_, draft.moves);
  if (!gain.has_value() || *gain + draft.promise < least) return;
  draft.promise = std::min(draft.promise, kMostInAll - *gain);
  if (!FirstStepIsSound(outlook_, draft.moves.front())) {
    if (outlook_.refused != nullptr) outlook_.refused->push_back(draft);
    return;
  }
  const double worth = Discounted(*gain + draft.promise, draft.moves.size());
  const auto place = std::find_if(
      ranked_.begin(), ranked_.end(),
      [worth](const Ranked& other) { return worth > other.worth; });
  ranked_.insert(place, {std::move(draft), worth});
}

void BestDrafts::AddTo(std::vector<Draft>& drafts) const {
  std::vector<const Draft*> kept;
  for (const Ranked& ranked : ranked_) {
    if (kept.size() == kMost) return;
    const Draft& draft = ranked.draft;
    // Of two with one aim a much shorter one may work where the better is
    // stopped; a single move is too little of it.
    const bool repeats =
        std::any_of(kept.begin(), kept.end(), [&draft](const Draft* better) {
          const std::size_t moves = draft.moves.size();
          return AimOf(*better) == AimOf(draft) &&
                 (moves == 1 || better->moves.size() <= moves + 1);
        });
    if (repeats) continue;
    kept.push_back(&draft);
    drafts.push_back(draft);
  }
}

}  // namespace assay
