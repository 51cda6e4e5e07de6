// Claims of pieces: bishops, knights, outposts, scope, and what is in danger.
#include "assay/facts/claim_lists.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/facts/pieces.h"

namespace assay {
namespace {

void AddBishops(const Facts& facts, Side side, std::vector<Claim>& claims) {
  if (HasBishopPair(facts, side)) {
    claims.push_back(BishopPairClaim(facts, side));
  }
  const Bitboard own = facts.Own(side, PieceKind::kBishop);
  if (HasOppositeBishops(facts)) {
    claims.push_back(SquaresClaim(ClaimKind::kOppositeBishops, side, own,
                                  facts.Own(Other(side), PieceKind::kBishop)));
  }
  for (const Square bishop : Each(own)) {
    const Bitboard blockers = BadBishopPawns(facts, side, bishop);
    if (blockers == 0) continue;
    claims.push_back(BadBishopClaim(side, bishop, blockers));
  }
}

void AddOutposts(const Facts& facts, Side side, std::vector<Claim>& claims) {
  const Bitboard minors =
      facts.Own(side, PieceKind::kKnight) | facts.Own(side, PieceKind::kBishop);
  for (const Square square : Each(facts.Pawns(side).outposts)) {
    if (!Contains(minors, square)) continue;
    claims.push_back(SquaresClaim(ClaimKind::kOutpost, side, Bit(square)));
    const Bitboard contesting = OutpostContesters(facts, side, square);
    if (contesting != 0) {
      claims.push_back(
          SquaresClaim(ClaimKind::kContestable, side, Bit(square), contesting));
    }
  }
}

void AddDangers(const Facts& facts, Side side, std::vector<Claim>& claims) {
  const Position& position = facts.position();
  for (const Square square : Each(LoosePieces(facts, side))) {
    claims.push_back(SquaresClaim(ClaimKind::kLoose, side, Bit(square)));
  }
  const bool in_check = position.side_to_move() == side && position.InCheck();
  for (const Square square : Each(AttackedPieces(facts, side))) {
    const int value = in_check ? 0 : ExchangeValueOf(facts, square);
    if (value > 0) claims.push_back(HangingClaim(side, square, value));
    const bool is_piece = position.At(square).kind() != PieceKind::kPawn;
    if (is_piece && IsTrapped(facts, square)) {
      claims.push_back(SquaresClaim(ClaimKind::kTrapped, side, Bit(square)));
    }
  }
  for (const Pin& pin : FindPins(position, side)) {
    claims.push_back(PinnedClaim(side, pin));
  }
}

void AddActivity(const Facts& facts, Side side, std::vector<Claim>& claims) {
  for (const Square minor : Each(ScreenedMinors(facts, side))) {
    claims.push_back(ScreenedClaim(side, minor));
  }
  claims.push_back(FarControlClaim(facts, side));
}

void AddTime(const Facts& facts, Side side, std::vector<Claim>& claims) {
  const Bitboard undeveloped = UndevelopedPieces(facts, side);
  if (undeveloped != 0) claims.push_back(UndevelopedClaim(side, undeveloped));
  for (const Square queen : Each(facts.Own(side, PieceKind::kQueen))) {
    const int chasers = EarlyQueenChasers(facts, side, queen);
    if (chasers < 0) continue;
    claims.push_back(EarlyQueenClaim(side, queen, chasers));
  }
}

}  // namespace

Claim SquaresClaim(ClaimKind kind, Side side, Bitboard squares) {
  return SquaresClaim(kind, side, squares, 0);
}

Claim SquaresClaim(ClaimKind kind, Side side, Bitboard squares,
                   Bitboard others) {
  Claim claim;
  claim.kind = kind;
  claim.has_side = true;
  claim.side = side;
  claim.squares = SquareList(squares);
  claim.others = SquareList(others);
  return claim;
}

Claim ScopeClaim(const Facts& facts, Side side, Square square) {
  Claim claim = SquaresClaim(ClaimKind::kScope, side, Bit(square));
  claim.count = PopCount(facts.Scope(side, square));
  return claim;
}

Claim ScreenedClaim(Side side, Square minor) {
  return SquaresClaim(ClaimKind::kScreened, side, Bit(minor),
                      Forward(side, Bit(minor)));
}

Claim FarControlClaim(const Facts& facts, Side side) {
  Claim claim = SquaresClaim(ClaimKind::kFarControl, side, 0);
  claim.count = PopCount(FarControl(facts, side));
  claim.other_count = PopCount(FarControl(facts, Other(side)));
  return claim;
}

Claim BishopPairClaim(const Facts& facts, Side side) {
  return SquaresClaim(ClaimKind::kBishopPair, side,
                      facts.Own(side, PieceKind::kBishop));
}

Claim SquareTakenClaim(Side side, Square pawn) {
  return SquaresClaim(ClaimKind::kSquareTaken, side, Bit(pawn),
                      Bit(NaturalKnight(side, pawn)));
}

Claim AttackCountClaim(const Facts& facts, Side attacker, Square target) {
  Claim claim = SquaresClaim(ClaimKind::kAttackCount, attacker, Bit(target));
  claim.count = PopCount(facts.Attackers(attacker, target));
  claim.other_count = PopCount(facts.Attackers(Other(attacker), target));
  return claim;
}

Claim BadBishopClaim(Side side, Square bishop, Bitboard pawns) {
  Claim claim = SquaresClaim(ClaimKind::kBadBishop, side, Bit(bishop), pawns);
  claim.count = PopCount(pawns);
  return claim;
}

Claim HangingClaim(Side side, Square square, int exchange_value) {
  Claim claim = SquaresClaim(ClaimKind::kHanging, side, Bit(square));
  claim.count = exchange_value;
  return claim;
}

Claim PinnedClaim(Side side, const Pin& pin) {
  Claim claim = SquaresClaim(ClaimKind::kPinned, side, Bit(pin.pinned));
  claim.others = {pin.slider, pin.behind};
  return claim;
}

Claim EarlyQueenClaim(Side side, Square queen, int chasers) {
  Claim claim = SquaresClaim(ClaimKind::kEarlyQueen, side, Bit(queen));
  claim.count = chasers;
  return claim;
}

Claim UndevelopedClaim(Side side, Bitboard pieces) {
  Claim claim = SquaresClaim(ClaimKind::kUndeveloped, side, pieces);
  claim.count = PopCount(pieces);
  return claim;
}

void AddPieceClaims(const Facts& facts, std::vector<Claim>& claims) {
  for (const Side side : kSides) {
    AddBishops(facts, side, claims);
    const Bitboard rim =
        facts.Own(side, PieceKind::kKnight) & (kFileA | kFileH);
    for (const Square square : Each(rim)) {
      claims.push_back(SquaresClaim(ClaimKind::kKnightRim, side, Bit(square)));
    }
    AddOutposts(facts, side, claims);
    const Bitboard movers = facts.position().Pieces(side) &
                            ~facts.Pawns(side).pawns &
                            ~facts.Own(side, PieceKind::kKing);
    for (const Square square : Each(movers)) {
      claims.push_back(ScopeClaim(facts, side, square));
    }
    for (const Square pawn : Each(SquareTakenPawns(facts, side))) {
      claims.push_back(SquareTakenClaim(side, pawn));
    }
    AddDangers(facts, side, claims);
    AddActivity(facts, side, claims);
    AddTime(facts, side, claims);
  }
}

}  // namespace assay
