// Opening or closing the centre.
//
// The trade recommends to open it for the side with the two bishops, the
// better development or the safer king, and where an own bishop is bad; to
// close it for the side with the knights, a worse developed army or an attack
// on a wing, and where the opponent's bishop is bad then. Only where one or two
// pawn moves change the type of the centre, counted after the opponent's
// likely recapture, or where a lever in the centre is there to be dissolved;
// not where nothing clear speaks for either. The more so where the opponent
// could otherwise decide it the other way.
#include <algorithm>
#include <cstdlib>

#include "assay/facts/kings.h"
#include "assay/facts/pieces.h"
#include "assay/plans/pawn_play.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

// The bishop pair gains 30 to 50 in an open position over a closed one; two
// reasons together are a textbook case. Own reasoning.
constexpr Centipawns kReason = 18;
constexpr int kFewest = 1;        // reasons
constexpr int kFewestForTwo = 2;  // for a plan of two moves
constexpr Centipawns kMostSeen = 20;
// Who dissolves the tension first has what it wants of the centre for good.
constexpr Centipawns kDecides = 14;
constexpr Centipawns kLeast = 18;
constexpr int kDeveloped = 2;  // minor pieces ahead
constexpr int kAttack = 2;     // pieces that look at the king more than back

// How many reasons more the side has for an open centre than the opponent;
// below 0 it wants it closed. The claims are those of the reasons.
int WishFor(const Outlook& outlook, std::vector<Claim>* open,
            std::vector<Claim>* closed) {
  const Facts& facts = outlook.facts;
  int wish = 0;
  for (const Side side : kSides) {
    const int sign = side == outlook.side ? 1 : -1;
    std::vector<Claim>* claims = sign > 0 ? open : closed;
    if (HasBishopPair(facts, side) && !HasBishopPair(facts, Other(side))) {
      wish += sign;
      claims->push_back(BishopPairClaim(facts, side));
    }
    const Bitboard mine = UndevelopedPieces(facts, side);
    const Bitboard theirs = UndevelopedPieces(facts, Other(side));
    if (PopCount(theirs) - PopCount(mine) >= kDeveloped) {
      wish += sign;
      claims->push_back(UndevelopedClaim(Other(side), theirs));
    }
    if (IsUncastled(facts, Other(side)) && !IsUncastled(facts, side)) {
      wish += sign;
      const Square king = outlook.position.King(Other(side));
      claims->push_back(
          SquaresClaim(ClaimKind::kUncastled, Other(side), Bit(king)));
    }
    const int attack = PopCount(KingAttackers(facts, Other(side))) -
                       PopCount(KingAttackers(facts, side));
    if (attack >= kAttack && IsCastled(facts, Other(side))) {
      // An attack on a wing wants no answer in the centre.
      wish -= sign;
      (sign > 0 ? closed : open)
          ->push_back(KingAttackersClaim(facts, Other(side)));
    }
    for (const Square bishop : Each(facts.Own(side, PieceKind::kBishop))) {
      const Bitboard pawns = BadBishopPawns(facts, side, bishop);
      if (pawns == 0) continue;
      wish += sign;  // its owner wants the centre open
      claims->push_back(BadBishopClaim(side, bishop, pawns));
      break;
    }
  }
  return wish;
}

// How open a centre is, for comparing before with after.
int OpennessOf(Centre centre) {
  switch (centre) {
    case Centre::kClosed:
      return 0;
    case Centre::kFixed:
      return 1;
    case Centre::kUnresolved:
    case Centre::kMobile:
      return 2;
    case Centre::kTension:
      return 3;
    case Centre::kOpen:
      return 4;
  }
  return 2;
}

// The position once a capture on the pawn's square is answered as is likely.
Position Settled(const Position& after, Move move) {
  const Move back = CheapestCapture(after, move.to());
  return back.is_null() ? after : after.After(back);
}

// The position after a lever is dissolved by the side's capture in the centre
// and the likely recapture; as it is where it has none.
Position Dissolved(const Outlook& outlook, const Position& end, Square pawn) {
  const Bitboard targets = PawnAttacks(outlook.side, pawn) &
                           end.Pieces(outlook.enemy(), PieceKind::kPawn) &
                           Facts::kCentreFiles;
  for (const Square target : Each(targets)) {
    const Move capture = FindMove(end, outlook.side, pawn, target);
    if (capture.is_null()) continue;
    return Settled(end.AfterPass().After(capture), capture);
  }
  return end;
}

// Whether the change is the one wished for. To open is to leave an open centre,
// to unlock a closed one, or to exchange where the pawns could still be locked.
bool IsWished(int wish, Centre before, Centre after) {
  const int change = OpennessOf(after) - OpennessOf(before);
  if (wish < 0) {
    return (after == Centre::kClosed || after == Centre::kFixed) && change < 0;
  }
  if (before == Centre::kTension) {
    return after == Centre::kOpen || after == Centre::kUnresolved ||
           after == Centre::kMobile;
  }
  return change > 0 && (after == Centre::kOpen || before == Centre::kClosed);
}

// Whether the opponent could decide the tension the other way by its next move:
// close the centre by an advance, or exchange in it.
bool OpponentCouldDecide(const Outlook& outlook, int wish) {
  const Facts& facts = outlook.facts;
  if (facts.centre() != Centre::kTension) return false;
  if (wish < 0) return true;  // a lever can be exchanged by either side
  const Side enemy = outlook.enemy();
  const Bitboard ours = facts.Pawns(outlook.side).pawns & Facts::kCentreFiles;
  const Bitboard levers = facts.Pawns(enemy).pawns & Facts::kCentreFiles &
                          PawnAttacks(outlook.side, ours);
  for (const Square pawn : Each(levers)) {
    const Bitboard stop =
        Forward(enemy, Bit(pawn)) & ~outlook.position.Occupied();
    if (stop == 0) continue;
    const Move push = FindMove(outlook.position, enemy, pawn, First(stop));
    if (push.is_null() || push.is_promotion()) continue;
    const std::optional<Position> after =
        PlayAlone(outlook.position, enemy, {push});
    if (!after.has_value()) continue;
    const Centre centre = Facts(*after).centre();
    if (centre == Centre::kClosed || centre == Centre::kFixed) return true;
  }
  return false;
}

struct Reshaping {
  const Outlook& outlook;
  int wish;
  Centipawns decides;
  const std::vector<Claim>& reasons;
  Centipawns before;
  Shortlist& best;
};

// Whether the last move does what is wished; the draft is offered then.
bool OfferIfWished(const Reshaping& shaping, const std::vector<Move>& moves) {
  const Outlook& outlook = shaping.outlook;
  const std::optional<Position> end =
      PlayAlone(outlook.position, outlook.side, moves);
  if (!end.has_value() || end->InCheck()) return false;
  const Move last = moves.back();
  const bool captures = FileOf(last.from()) != FileOf(last.to());
  const Position settled = captures ? Settled(*end, last) : *end;
  Centre centre_after = Facts(settled).centre();
  if (centre_after == Centre::kTension && shaping.wish > 0) {
    const Position dissolved = Dissolved(outlook, *end, last.to());
    centre_after = Facts(dissolved).centre();
  }
  if (!IsWished(shaping.wish, outlook.facts.centre(), centre_after)) {
    return false;
  }
  const Centipawns change = ScoreAt(outlook, settled) - shaping.before;
  const Centipawns value = kReason * std::abs(shaping.wish) + shaping.decides +
                           std::clamp(change, -kMostSeen, kMostSeen);
  if (value < kLeast) return false;
  Draft draft;
  draft.kind = PlanKind::kReshape;
  draft.moves = moves;
  draft.targets.Add(last.to());
  draft.claims.push_back(CentreClaim(outlook.facts));
  const Facts then(*end);
  Claim centre = CentreClaim(then);
  centre.line = WithPasses(outlook.position, outlook.side, moves);
  draft.claims.push_back(std::move(centre));
  draft.claims.insert(draft.claims.end(), shaping.reasons.begin(),
                      shaping.reasons.end());
  shaping.best.Offer(outlook, std::move(draft), value);
  return true;
}

// Pawn moves of files c to f and captures into them.
std::vector<Move> CentreMoves(const Position& position, Side side) {
  std::vector<Move> found;
  if (position.side_to_move() != side && position.InCheck()) return found;
  const Position own =
      position.side_to_move() == side ? position : position.AfterPass();
  MoveList moves;
  LegalMoves(own, moves);
  for (const Move move : moves) {
    if (move.is_promotion()) continue;
    if (own.At(move.from()).kind() != PieceKind::kPawn) continue;
    if (!Contains(Facts::kCentreFiles, move.to())) continue;
    if (!own.At(move.to()).empty() &&
        own.At(move.to()).kind() != PieceKind::kPawn) {
      continue;  // taking a piece is about the piece
    }
    found.push_back(move);
  }
  return found;
}

// A quiet step first, where no single move does it.
void TryTwo(const Reshaping& shaping, const std::vector<Move>& firsts) {
  const Outlook& outlook = shaping.outlook;
  for (const Move first : firsts) {
    if (FileOf(first.from()) != FileOf(first.to())) continue;
    const std::optional<Position> at =
        PlayAlone(outlook.position, outlook.side, {first});
    if (!at.has_value() || at->InCheck()) continue;
    if (!StandsSafely(*at, first.to())) continue;
    for (const Move second : CentreMoves(*at, outlook.side)) {
      if (FileOf(second.from()) != FileOf(second.to())) continue;
      OfferIfWished(shaping, {first, second});
    }
  }
}

}  // namespace

void DraftReshapes(const Outlook& outlook, std::vector<Draft>& drafts) {
  if (outlook.facts.InCheck()) return;
  std::vector<Claim> open;
  std::vector<Claim> closed;
  const int wish = WishFor(outlook, &open, &closed);
  if (std::abs(wish) < kFewest) return;
  Shortlist best(1);
  const Centipawns decides = OpponentCouldDecide(outlook, wish) ? kDecides : 0;
  const Reshaping shaping = {outlook,
                             wish,
                             decides,
                             wish > 0 ? open : closed,
                             ScoreAt(outlook, outlook.position),
                             best};
  const std::vector<Move> firsts = CentreMoves(outlook.position, outlook.side);
  bool found = false;
  for (const Move move : firsts) {
    found = OfferIfWished(shaping, {move}) || found;
  }
  if (!found && std::abs(wish) >= kFewestForTwo) TryTwo(shaping, firsts);
  best.MoveTo(drafts);
}

}  // namespace assay
