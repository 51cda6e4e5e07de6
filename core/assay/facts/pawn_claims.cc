#include "assay/facts/claim_lists.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/levers.h"
#include "assay/facts/pawn_groups.h"

namespace assay {
namespace {

struct WingFiles {
  int first;
  int last;
};
constexpr WingFiles kWingFiles[] = {{0, 2}, {3, 4}, {5, 7}};

Bitboard FilesFrom(WingFiles wing) {
  Bitboard set = 0;
  for (int file = wing.first; file <= wing.last; ++file) set |= FileMask(file);
  return set;
}

void AddPassedPawns(const Facts& facts, Side side, std::vector<Claim>& claims) {
  const PawnFacts& own = facts.Pawns(side);
  for (const Square square : Each(own.passed)) {
    claims.push_back(SquaresClaim(ClaimKind::kPassed, side, Bit(square)));
    if (Contains(own.attacks, square)) {
      claims.push_back(
          SquaresClaim(ClaimKind::kProtectedPassed, side, Bit(square)));
    }
    if (IsOutsidePassed(facts, side, square)) {
      claims.push_back(
          SquaresClaim(ClaimKind::kOutsidePassed, side, Bit(square)));
    }
    const Bitboard partners = own.passed & ConnectedSquares(square);
    for (const Square partner : Each(partners)) {
      if (FileOf(partner) < FileOf(square)) continue;  // each pair once
      claims.push_back(SquaresClaim(ClaimKind::kConnectedPassed, side,
                                    Bit(square) | Bit(partner)));
    }
  }
}

void AddBlockades(const Facts& facts, Side side, std::vector<Claim>& claims) {
  const PawnFacts& enemy = facts.Pawns(Other(side));
  const Bitboard worth_blocking =
      enemy.passed | enemy.isolated | enemy.backward;
  const Bitboard pieces =
      facts.position().Pieces(side) & ~facts.Pawns(side).pawns;
  for (const Square blocker :
       Each(Forward(Other(side), worth_blocking) & pieces)) {
    claims.push_back(BlockadeClaim(side, blocker));
  }
}

void AddMajorities(const Facts& facts, Side side, std::vector<Claim>& claims) {
  for (const WingFiles wing : kWingFiles) {
    const Bitboard files = FilesFrom(wing);
    const Bitboard own = facts.Pawns(side).pawns & files;
    const Bitboard enemy = facts.Pawns(Other(side)).pawns & files;
    if (PopCount(own) <= PopCount(enemy)) continue;
    claims.push_back(MajorityClaim(side, own, PopCount(enemy)));
  }
}

}  // namespace

Bitboard ConnectedSquares(Square pawn) {
  return KingAttacks(pawn) & ~FileMask(FileOf(pawn));
}

bool IsOutsidePassed(const Facts& facts, Side side, Square pawn) {
  const Bitboard enemy = facts.Pawns(Other(side)).pawns;
  if (enemy == 0 || facts.Pawns(side).pawns == Bit(pawn)) return false;
  Bitboard near = FileMask(FileOf(pawn));
  for (int i = 0; i < 2; ++i) near |= Neighbours(near);
  return (enemy & near) == 0;
}

Bitboard HangingPair(const Facts& facts, Side side) {
  const PawnFacts& own = facts.Pawns(side);
  const PawnFacts& enemy = facts.Pawns(Other(side));
  const Bitboard fit = own.pawns & ~own.doubled & ~own.passed & ~enemy.files &
                       (RelativeRankMask(side, 3) | RelativeRankMask(side, 4));
  for (int file = 1; file < 6; ++file) {
    const Bitboard both = FileMask(file) | FileMask(file + 1);
    const Bitboard beside = Neighbours(both) & ~both;
    const Bitboard pair = fit & both;
    if ((pair & FileMask(file)) != 0 && (pair & FileMask(file + 1)) != 0 &&
        (own.pawns & beside) == 0) {
      return pair;
    }
  }
  return 0;
}

Claim DoubledClaim(const Facts& facts, Side side, int file) {
  const Bitboard pawns = facts.Pawns(side).pawns & FileMask(file);
  Claim claim = SquaresClaim(ClaimKind::kDoubled, side, pawns);
  claim.count = PopCount(pawns);
  return claim;
}

Claim LeverClaim(const Facts& facts, Side side, Square pawn) {
  return SquaresClaim(ClaimKind::kLever, side, Bit(pawn),
                      facts.Attacks(pawn) & facts.Pawns(Other(side)).pawns);
}

Claim LeverMoveClaim(Side side, const LeverMove& move) {
  Claim claim = SquaresClaim(ClaimKind::kLeverMove, side, 0, move.targets);
  claim.squares = {move.from, move.to};
  return claim;
}

Claim RamClaim(Side side, Square pawn) {
  return SquaresClaim(ClaimKind::kRam, side, Bit(pawn),
                      Forward(side, Bit(pawn)));
}

Claim ChainBaseClaim(const Facts& facts, Side side, Square base) {
  return SquaresClaim(ClaimKind::kChainBase, side, Bit(base),
                      facts.Attacks(base) & facts.Pawns(side).pawns);
}

Claim IslandsClaim(const Facts& facts, Side side) {
  Claim claim = SquaresClaim(ClaimKind::kIslands, side, 0);
  claim.count = facts.Pawns(side).islands;
  claim.other_count = facts.Pawns(Other(side)).islands;
  return claim;
}

Claim BlockadeClaim(Side side, Square blocker) {
  // The pawn is one rank ahead of the blocker, as the blocker's side sees it.
  return SquaresClaim(ClaimKind::kBlockade, side, Bit(blocker),
                      Forward(side, Bit(blocker)));
}

Claim MajorityClaim(Side side, Bitboard own, int enemies) {
  Claim claim = SquaresClaim(ClaimKind::kMajority, side, own);
  claim.count = PopCount(own);
  claim.other_count = enemies;
  return claim;
}

Claim MaterialClaim(const Facts& facts, Side side, PieceKind kind) {
  const Bitboard own = facts.Own(side, kind);
  const Bitboard enemy = facts.Own(Other(side), kind);
  Claim claim = SquaresClaim(ClaimKind::kMaterial, side, own, enemy);
  claim.piece = kind;
  claim.count = PopCount(own);
  claim.other_count = PopCount(enemy);
  return claim;
}

Claim PawnAdvanceClaim(const Facts& facts, Side side) {
  const Bitboard beyond =
      facts.Pawns(side).pawns &
      ~(RelativeRankMask(side, 1) | RelativeRankMask(side, 2));
  Claim claim = SquaresClaim(ClaimKind::kPawnAdvance, side, beyond);
  claim.count = facts.Pawns(side).advance;
  claim.other_count = facts.Pawns(Other(side)).advance;
  return claim;
}

void AddPawnClaims(const Facts& facts, std::vector<Claim>& claims) {
  for (const Side side : kSides) {
    const PawnFacts& own = facts.Pawns(side);
    for (int file = 0; file < 8; ++file) {
      if ((own.doubled & FileMask(file)) != 0) {
        claims.push_back(DoubledClaim(facts, side, file));
      }
    }
    const auto add_each = [&](ClaimKind kind, Bitboard squares) {
      for (const Square square : Each(squares)) {
        claims.push_back(SquaresClaim(kind, side, Bit(square)));
      }
    };
    add_each(ClaimKind::kIsolated, own.isolated);
    add_each(ClaimKind::kBackward, own.backward);
    const Bitboard hanging = HangingPair(facts, side);
    if (hanging != 0) {
      claims.push_back(SquaresClaim(ClaimKind::kHangingPair, side, hanging));
    }
    AddPassedPawns(facts, side, claims);
    add_each(ClaimKind::kCandidate, own.candidates);
    for (const Square pawn : Each(own.levers)) {
      claims.push_back(LeverClaim(facts, side, pawn));
    }
    for (const LeverMove& move : FindLeverMoves(facts, side)) {
      claims.push_back(LeverMoveClaim(side, move));
    }
    for (const Square pawn : Each(own.rammed)) {
      claims.push_back(RamClaim(side, pawn));
    }
    for (const Square base : Each(own.chain_bases)) {
      claims.push_back(ChainBaseClaim(facts, side, base));
    }
    claims.push_back(IslandsClaim(facts, side));
    claims.push_back(PawnAdvanceClaim(facts, side));
    AddMajorities(facts, side, claims);
    add_each(ClaimKind::kHole, own.holes);
    AddBlockades(facts, side, claims);
    for (const PieceKind kind : kAllKinds) {
      claims.push_back(MaterialClaim(facts, side, kind));
    }
  }
}

}  // namespace assay
