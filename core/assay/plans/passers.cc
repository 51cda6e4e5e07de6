// Passed pawns: to advance an own one, or to blockade the opponent's.
//
// The trade recommends the advance where each stop square is held (by pieces
// or by a rook behind) and there is a way forward; early in the game only for
// a pawn that is far on already, late for any. It recommends the blockade
// where the enemy pawn has come half-way: by a knight first, then by a bishop,
// by the king when few pieces are left, by a rook where nothing else can; never
// by the queen, which every attack drives off ("My System", Nimzowitsch, 1925,
// from memory). Not where a piece stands there already, and not on a square
// where the blockader cannot stay.
#include <algorithm>
#include <cstdlib>

#include "assay/facts/claim_makers.h"
#include "assay/facts/exchange.h"
#include "assay/facts/routes.h"
#include "assay/plans/best_drafts.h"
#include "assay/plans/pawn_play.h"

namespace assay {
namespace {

// What the ledger gives a step of the pawn is counted by the ledger; these are
// for what it does not see. Own reasoning.
constexpr Centipawns kWayForward = 10;  // the next square is free and held
constexpr Centipawns kRookBehind = 10;
constexpr Centipawns kLeast = 15;
// The opponent will not look on while it goes on: it gives tempi, or a piece
// at the end, not all that the ledger sees at the end of the moves.
constexpr Centipawns kMostStep = 90;
constexpr Centipawns kMostQueen = 120;
constexpr int kFewPieces = 110;  // of facts.phase()
constexpr int kMostSteps = 3;

// A blockaded passed pawn loses about half of its worth; what blocks best
// gives up least. Own reasoning.
constexpr Centipawns kByKnight = 42;
constexpr Centipawns kByBishop = 34;
constexpr Centipawns kByKing = 38;
constexpr Centipawns kByRook = 16;
constexpr Centipawns kARankFurther = 8;
constexpr Centipawns kLessWhereMet = 16;
constexpr int kMostRoute = 3;

Square Ahead(Side side, Square square) {
  return First(Forward(side, Bit(square)));
}

bool HasRookBehind(const Position& position, Side side, Square pawn) {
  const Bitboard rooks = position.Pieces(side, PieceKind::kRook) |
                         position.Pieces(side, PieceKind::kQueen);
  return (RookAttacks(pawn, position.Occupied()) & rooks &
          RearSpan(side, Bit(pawn))) != 0;
}

// One move that makes the step safe: a rook behind the pawn, or the king or a
// minor piece to where it holds the stop square.
Move EscortFor(const Outlook& outlook, Square pawn, Move step) {
  const Position& position = outlook.position;
  const Side side = outlook.side;
  const Square stop = step.to();
  const Bitboard occupied = (position.Occupied() ^ Bit(pawn)) | Bit(stop);
  const auto places_of = [&](PieceKind kind) -> Bitboard {
    if (kind == PieceKind::kRook) {
      return RookAttacks(pawn, position.Occupied()) & RearSpan(side, Bit(pawn));
    }
    return PieceAttacks(kind, stop, occupied);
  };
  for (const PieceKind kind : {PieceKind::kRook, PieceKind::kKing,
                               PieceKind::kKnight, PieceKind::kBishop}) {
    if (kind == PieceKind::kKing && outlook.facts.phase() > kFewPieces) {
      continue;
    }
    const Bitboard places = places_of(kind) & ~position.Occupied();
    for (const Square from : Each(position.Pieces(side, kind))) {
      for (const Square to : Each(outlook.facts.Attacks(from) & places)) {
        const Move move = FindMove(position, side, from, to);
        if (!move.is_null() && AreSound(outlook, {move, step})) return move;
      }
    }
  }
  return Move();
}

// The steps that the pawn can take safely, with an escort first where even
// the first one needs it.
std::vector<Move> StepsOf(const Outlook& outlook, Square pawn) {
  std::vector<Move> moves;
  Position at = outlook.position;
  for (int i = 0; i < kMostSteps; ++i) {
    const Move step =
        FindMove(at, outlook.side, pawn, Ahead(outlook.side, pawn));
    if (step.is_null()) break;
    if (at.side_to_move() != outlook.side) at = at.AfterPass();
    const Position next = at.After(step);
    if (!StandsSafely(next, step.to())) {
      if (i > 0) break;
      const Move escort = EscortFor(outlook, pawn, step);
      if (escort.is_null()) return {};
      return {escort, step};
    }
    // A check has to be answered: nothing can be played alone after it.
    if (next.InCheck()) break;
    moves.push_back(step);
    pawn = step.to();
    at = next;
    if (step.is_promotion()) break;
  }
  return moves;
}

void OfferAdvance(const Outlook& outlook, Square pawn,
                  const std::vector<Move>& moves, Shortlist& best) {
  const Side side = outlook.side;
  Draft draft;
  draft.kind = PlanKind::kPasser;
  draft.moves = moves;
  const std::optional<Position> end = PlayAlone(outlook.position, side, moves);
  const std::optional<Centipawns> gain = GainAlone(outlook, moves);
  if (!end.has_value() || !gain.has_value()) return;
  const Square there = moves.back().to();
  draft.targets.Add(there);
  Centipawns value = *gain;
  if (moves.back().is_promotion()) {
    value = std::min(value, kMostQueen);
  } else {
    const Square next = Ahead(side, there);
    if (end->At(next).empty() && !end->IsAttacked(outlook.enemy(), next)) {
      value += kWayForward;
    }
    if (HasRookBehind(*end, side, there)) value += kRookBehind;
    value = std::min(value, kMostStep);
  }
  if (value < kLeast) return;
  draft.claims.push_back(SquaresClaim(ClaimKind::kPassed, side, Bit(pawn)));
  draft.claims.push_back(
      KingDistanceClaim(outlook.facts, outlook.enemy(), Ahead(side, pawn)));
  best.Offer(outlook, std::move(draft), value);
}

void AddAdvance(const Outlook& outlook, Square pawn, Shortlist& best) {
  const bool far_on = RelativeRank(outlook.side, pawn) >= 3;
  if (!far_on && outlook.facts.phase() > kFewPieces) return;
  const std::vector<Move> moves = StepsOf(outlook, pawn);
  if (moves.empty()) return;
  OfferAdvance(outlook, pawn, moves, best);
  // The first step alone is worth making even where a later one is stopped.
  if (moves.size() > 1 && moves.front().from() == pawn) {
    OfferAdvance(outlook, pawn, {moves.front()}, best);
  }
}

Centipawns WorthOfBlocker(const Outlook& outlook, PieceKind kind) {
  switch (kind) {
    case PieceKind::kKnight:
      return kByKnight;
    case PieceKind::kBishop:
      return kByBishop;
    case PieceKind::kKing:
      return outlook.facts.phase() <= kFewPieces ? kByKing : 0;
    case PieceKind::kRook:
      return kByRook;
    default:
      return 0;
  }
}

// Whether a piece that is not the queen stands right before the pawn.
bool IsHeldUp(const Outlook& outlook, Square pawn) {
  const Bitboard holders = outlook.position.Pieces(outlook.side) &
                           ~outlook.facts.Own(outlook.side, PieceKind::kQueen);
  return (Forward(outlook.enemy(), Bit(pawn)) & holders) != 0;
}

// Whether a minor piece or the king waits for it further on: it will not get
// through, and to stop it sooner is worth that much less.
bool IsMetLater(const Outlook& outlook, Square pawn) {
  const Bitboard heavy = outlook.facts.Own(outlook.side, PieceKind::kQueen) |
                         outlook.facts.Own(outlook.side, PieceKind::kRook);
  return (FrontSpan(outlook.enemy(), Bit(pawn)) &
          outlook.position.Pieces(outlook.side) & ~heavy) != 0;
}

Claim HoldingClaim(const Outlook& outlook, Square pawn, Square goal,
                   const std::vector<Move>& moves) {
  Claim claim;
  if (goal == Ahead(outlook.enemy(), pawn)) {
    claim = BlockadeClaim(outlook.side, goal);
  } else {
    const std::optional<Position> end =
        PlayAlone(outlook.position, outlook.side, moves);
    claim = ControlClaim(Facts(*end), outlook.side, goal);
  }
  claim.line = WithPasses(outlook.position, outlook.side, moves);
  return claim;
}

// The routes of all pieces to one square of the pawn's way.
void AddBlockers(const Outlook& outlook, Square pawn, Square goal,
                 Shortlist& best) {
  const Side side = outlook.side;
  const Bitboard walkers = outlook.position.Pieces(side) &
                           ~outlook.facts.Pawns(side).pawns &
                           ~outlook.facts.Own(side, PieceKind::kQueen);
  const int rank = RelativeRank(outlook.enemy(), pawn);
  for (const Square from : InOrder(side, walkers)) {
    const PieceKind kind = outlook.position.At(from).kind();
    Centipawns value = WorthOfBlocker(outlook, kind);
    if (value == 0) continue;
    const int most = kind == PieceKind::kRook ? 1 : kMostRoute;
    const Reach reach(outlook.facts, from, most);
    if (reach.MovesTo(goal) < 1) continue;
    value += (rank - 3) * kARankFurther;
    if (IsMetLater(outlook, pawn)) value -= kLessWhereMet;
    for (const SquareList& route : RoutesInOrder(reach, side, goal, 2)) {
      Draft draft;
      draft.kind = PlanKind::kPasser;
      draft.moves = MovesOfRoute(outlook, route);
      if (!AreSound(outlook, draft.moves)) continue;
      // What stands in the way will not wait to be taken; and a way that takes
      // the pawn is no blockade.
      if (route.ToSet() & outlook.position.Pieces(outlook.enemy())) continue;
      draft.targets = SquareList{goal, pawn};
      draft.claims.push_back(
          SquaresClaim(ClaimKind::kPassed, outlook.enemy(), Bit(pawn)));
      draft.claims.push_back(HoldingClaim(outlook, pawn, goal, draft.moves));
      best.Offer(outlook, std::move(draft), value);
      break;
    }
  }
}

void AddBlockade(const Outlook& outlook, Square pawn, Shortlist& best) {
  const Side enemy = outlook.enemy();
  if (RelativeRank(enemy, pawn) < 3 || IsHeldUp(outlook, pawn)) return;
  if (ExchangeValueOf(outlook.facts, pawn) > 0) return;  // take it instead
  const Square stop = Ahead(enemy, pawn);
  if (outlook.position.At(stop).empty() &&
      !Contains(outlook.facts.Pawns(enemy).attacks, stop)) {
    AddBlockers(outlook, pawn, stop, best);
    return;
  }
  if (RelativeRank(enemy, stop) == 7) return;
  const Square next = Ahead(enemy, stop);
  if (outlook.position.At(next).empty() &&
      !Contains(outlook.facts.Pawns(enemy).attacks, next)) {
    AddBlockers(outlook, pawn, next, best);
  }
}

}  // namespace

void DraftPassers(const Outlook& outlook, std::vector<Draft>& drafts) {
  if (outlook.facts.InCheck()) return;
  Shortlist best(3);
  for (const Square pawn : Each(outlook.facts.Pawns(outlook.side).passed)) {
    AddAdvance(outlook, pawn, best);
  }
  for (const Square pawn : Each(outlook.facts.Pawns(outlook.enemy()).passed)) {
    AddBlockade(outlook, pawn, best);
  }
  best.MoveTo(drafts);
}

}  // namespace assay
