// Pawn advances for space.
//
// The trade recommends one where the pawn is supported (guarded, or beside
// another) and stands safely on its fourth rank or beyond: in the centre while
// it is mobile, or where no enemy pawn is left to oppose it there, then also
// with pieces alone for support; on a wing where the side is the stronger one
// or the centre is locked; the more so where it drives a piece away or gives a
// piece an outpost.
// Not beside the own castled king, not where the advance is a lever (that is a
// break) or moves a passed pawn (that has its own kind), and not where it
// leaves holes: the ledger counts those.
#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/plans/pawn_play.h"

namespace assay {
namespace {

// Own reasoning on the scale of the weights (space counts little a square).
constexpr Centipawns kSquareGained = 2;
constexpr Centipawns kMobileCentre = 22;  // the textbook case
constexpr Centipawns kCentre = 8;
constexpr Centipawns kStrongWing = 8;
constexpr Centipawns kChainPoints = 16;  // with a locked centre: the plan
constexpr Centipawns kDrivesPiece = 12;  // about a tempo
constexpr Centipawns kNewOutpost = 12;   // half of an outpost held
constexpr Centipawns kMostSeen = 20;     // of what the ledger says
constexpr Centipawns kLeast = 22;
// On the wings: development comes first, and in an open centre it is punished
// while there are pieces to do so.
constexpr int kUndeveloped = 2;
constexpr int kManyPieces = 128;  // of facts.phase()

// Whether more own than enemy pieces look at the wing's advanced squares.
bool IsStrongerOn(const Outlook& outlook, Square square) {
  const int file = FileOf(square);
  const Bitboard wing = file <= 2 ? FileMask(0) | FileMask(1) | FileMask(2)
                                  : FileMask(5) | FileMask(6) | FileMask(7);
  const Facts& facts = outlook.facts;
  const int own = PopCount(facts.Own(outlook.side, PieceKind::kPawn) & wing) +
                  PopCount(facts.Attacked(outlook.side) & wing);
  const int theirs =
      PopCount(facts.Own(outlook.enemy(), PieceKind::kPawn) & wing) +
      PopCount(facts.Attacked(outlook.enemy()) & wing);
  return own > theirs + 1;
}

bool Drives(const Outlook& outlook, Square to) {
  const Position& position = outlook.position;
  const Bitboard pieces = position.Pieces(outlook.enemy()) &
                          ~position.Pieces(PieceKind::kPawn) &
                          ~position.Pieces(PieceKind::kKing);
  return (PawnAttacks(outlook.side, to) & pieces) != 0;
}

// Whether the square is in the middle and no enemy pawn is left there.
bool IsUnopposedCentre(const Outlook& outlook, Square to) {
  constexpr Bitboard kMiddle = FileMask(3) | FileMask(4);
  return Contains(kMiddle, to) &&
         (outlook.facts.Pawns(outlook.enemy()).pawns & kMiddle) == 0;
}

Centipawns ReasonsFor(const Outlook& outlook, Square to, const Facts& after) {
  const Facts& facts = outlook.facts;
  const Side side = outlook.side;
  Centipawns sum = kSquareGained *
                   (PopCount(after.Space(side)) - PopCount(facts.Space(side)));
  const bool centre = FileOf(to) == 3 || FileOf(to) == 4;
  if (centre) {
    const Bitboard own = facts.Pawns(side).pawns;
    const bool both = (own & FileMask(3)) != 0 && (own & FileMask(4)) != 0;
    const bool mobile = facts.centre() == Centre::kMobile && both;
    sum += mobile || IsUnopposedCentre(outlook, to) ? kMobileCentre : kCentre;
  } else if (ChainPointsTo(outlook, to)) {
    sum += kChainPoints;
  } else if (facts.centre() == Centre::kClosed || IsStrongerOn(outlook, to)) {
    sum += kStrongWing;
  }
  if (Drives(outlook, to)) sum += kDrivesPiece;
  const Bitboard gained =
      after.Pawns(side).outposts & ~facts.Pawns(side).outposts;
  const Bitboard minors =
      facts.Own(side, PieceKind::kKnight) | facts.Own(side, PieceKind::kBishop);
  if (gained != 0 && minors != 0) sum += kNewOutpost;
  return sum;
}

bool IsPremature(const Outlook& outlook, Square to) {
  if (Contains(Facts::kCentreFiles, to)) return false;
  if (outlook.facts.centre() == Centre::kOpen) {
    return outlook.facts.phase() > kManyPieces;
  }
  return PopCount(UndevelopedPieces(outlook.facts, outlook.side)) >=
         kUndeveloped;
}

// A pawn step to one of the places; null where there is none.
Move StepTo(const Outlook& outlook, Bitboard places, Bitboard pawns) {
  const Side side = outlook.side;
  for (const Square place : Each(places & ~outlook.position.Occupied())) {
    const Bitboard behind = pawns & RearSpan(side, Bit(place));
    if (behind == 0) continue;
    const Square from = side == Side::kWhite ? Last(behind) : First(behind);
    const Move move = FindMove(outlook.position, side, from, place);
    if (!move.is_null() && !UncoversKing(outlook, from)) return move;
  }
  return Move();
}

// A pawn step that would guard the square, else stand beside it; null where
// there is none.
Move SupportFor(const Outlook& outlook, Square to) {
  const Bitboard pawns =
      outlook.facts.Pawns(outlook.side).pawns & ~FileMask(FileOf(to));
  const Move guard =
      StepTo(outlook, PawnAttacks(outlook.enemy(), Bit(to)), pawns);
  return guard.is_null() ? StepTo(outlook, Neighbours(Bit(to)), pawns) : guard;
}

bool IsSupported(const Outlook& outlook, Square from, Square to) {
  const Bitboard others = outlook.facts.Pawns(outlook.side).pawns & ~Bit(from);
  const Bitboard helpers =
      PawnAttacks(outlook.enemy(), Bit(to)) | Neighbours(Bit(to));
  return (others & helpers) != 0;
}

void Weigh(const Outlook& outlook, Square from, Move advance, Shortlist& best) {
  const Square to = advance.to();
  if (IsPremature(outlook, to)) return;
  Draft draft;
  draft.kind = PlanKind::kExpansion;
  if (!IsSupported(outlook, from, to) && !IsUnopposedCentre(outlook, to)) {
    if (!Contains(Facts::kCentreFiles, to) &&
        outlook.facts.centre() != Centre::kClosed) {
      return;  // too slow while the centre can move
    }
    const Move support = SupportFor(outlook, to);
    if (support.is_null()) return;
    draft.moves.push_back(support);
  }
  draft.moves.push_back(advance);
  const std::optional<Position> end =
      PlayAlone(outlook.position, outlook.side, draft.moves);
  if (!end.has_value()) return;
  const Facts after(*end);
  Centipawns value = ReasonsFor(outlook, to, after);
  if (value + kMostSeen < kLeast) return;
  const Centipawns change =
      ScoreAt(outlook, *end) - ScoreAt(outlook, outlook.position);
  value += std::clamp(change / 2, -kMostSeen, kMostSeen);
  if (value < kLeast) return;
  draft.targets.Add(to);
  Claim space = SpaceClaim(after, outlook.side);
  space.line = WithPasses(outlook.position, outlook.side, draft.moves);
  draft.claims.push_back(SpaceClaim(outlook.facts, outlook.side));
  draft.claims.push_back(std::move(space));
  draft.claims.push_back(CentreClaim(outlook.facts));
  best.Offer(outlook, std::move(draft), value);
}

}  // namespace

void DraftExpansions(const Outlook& outlook, std::vector<Draft>& drafts) {
  if (outlook.facts.InCheck()) return;
  Shortlist best(2);
  const Side side = outlook.side;
  const PawnFacts& own = outlook.facts.Pawns(side);
  const Bitboard theirs = outlook.facts.Pawns(outlook.enemy()).pawns;
  const Bitboard empty = ~outlook.position.Occupied();
  const Bitboard levers = PawnAttacks(outlook.enemy(), theirs);
  // Beyond the sixth rank there is no space to gain.
  const Bitboard useful = RelativeRankMask(side, 3) |
                          RelativeRankMask(side, 4) | RelativeRankMask(side, 5);
  for (const Square from : Each(own.pawns & ~own.passed)) {
    if (UncoversKing(outlook, from)) continue;
    const Bitboard one = Forward(side, Bit(from)) & empty;
    const Bitboard two = Forward(side, one & RelativeRankMask(side, 2)) & empty;
    for (const Square to : Each((one | two) & useful & ~levers)) {
      const Move move = FindMove(outlook.position, side, from, to);
      if (!move.is_null()) Weigh(outlook, from, move, best);
    }
  }
  best.MoveTo(drafts);
}

}  // namespace assay
