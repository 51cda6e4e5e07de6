// Claims of files, space and the centre.
#include "assay/facts/claim_lists.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

ClaimKind KindOf(Centre centre) {
  switch (centre) {
    case Centre::kOpen:
      return ClaimKind::kCentreOpen;
    case Centre::kClosed:
      return ClaimKind::kCentreClosed;
    case Centre::kFixed:
      return ClaimKind::kCentreFixed;
    case Centre::kTension:
      return ClaimKind::kCentreTension;
    case Centre::kMobile:
      return ClaimKind::kCentreMobile;
    case Centre::kUnresolved:
      break;
  }
  return ClaimKind::kCentreUnresolved;
}

// Pawns of the side in levers with both pawns on files c to f.
Bitboard CentreLevers(const Facts& facts, Side side) {
  const Side enemy = Other(side);
  const Bitboard enemy_inner = facts.Pawns(enemy).pawns & Facts::kCentreFiles;
  return facts.Pawns(side).pawns & Facts::kCentreFiles &
         PawnAttacks(enemy, enemy_inner);
}

void AddFiles(const Facts& facts, std::vector<Claim>& claims) {
  for (int file = 0; file < 8; ++file) {
    if (Contains(facts.OpenFiles(), MakeSquare(file, 0))) {
      claims.push_back(OpenFileClaim(file));
    }
    for (const Side side : kSides) {
      if (Contains(facts.HalfOpenFiles(side), MakeSquare(file, 0))) {
        claims.push_back(HalfOpenFileClaim(side, file));
      }
    }
  }
}

void AddRooks(const Facts& facts, Side side, std::vector<Claim>& claims) {
  const Bitboard rooks = facts.Own(side, PieceKind::kRook);
  const Bitboard majors = rooks | facts.Own(side, PieceKind::kQueen);
  const Bitboard free_files = facts.OpenFiles() | facts.HalfOpenFiles(side);
  for (const Square square : Each(majors & free_files)) {
    claims.push_back(SquaresClaim(ClaimKind::kRookOnFile, side, Bit(square)));
  }
  for (const Square square : Each(facts.SeventhRank(side))) {
    claims.push_back(SquaresClaim(ClaimKind::kSeventhRank, side, Bit(square)));
  }
  for (const Square square : Each(rooks & free_files)) {
    // The next rook up the same file, with nothing between.
    const Bitboard above =
        facts.Attacks(square) & rooks & FrontSpan(Side::kWhite, Bit(square));
    if (above != 0) {
      claims.push_back(
          SquaresClaim(ClaimKind::kDoubledRooks, side, Bit(square) | above));
    }
  }
}

}  // namespace

Claim CentreClaim(const Facts& facts) {
  Claim claim;
  claim.kind = KindOf(facts.centre());
  if (facts.centre() == Centre::kClosed) {
    claim.squares = SquareList(facts.CentreRams(Side::kWhite));
    claim.others = SquareList(facts.CentreRams(Side::kBlack));
  } else if (facts.centre() == Centre::kTension) {
    claim.squares = SquareList(CentreLevers(facts, Side::kWhite));
    claim.others = SquareList(CentreLevers(facts, Side::kBlack));
  }
  return claim;
}

Claim OpenFileClaim(int file) {
  Claim claim;
  claim.kind = ClaimKind::kOpenFile;
  claim.squares = SquareList(FileMask(file));
  return claim;
}

Claim HalfOpenFileClaim(Side side, int file) {
  return SquaresClaim(ClaimKind::kHalfOpenFile, side, FileMask(file));
}

Claim SpaceClaim(const Facts& facts, Side side) {
  Claim claim = SquaresClaim(ClaimKind::kSpace, side, 0);
  claim.count = PopCount(facts.Space(side));
  claim.other_count = PopCount(facts.Space(Other(side)));
  return claim;
}

Claim ControlClaim(const Facts& facts, Side side, Square square) {
  Claim claim = SquaresClaim(ClaimKind::kControl, side, Bit(square));
  claim.count = PopCount(facts.Attackers(side, square));
  claim.other_count = PopCount(facts.Attackers(Other(side), square));
  return claim;
}

void AddCentreClaims(const Facts& facts, std::vector<Claim>& claims) {
  AddFiles(facts, claims);
  claims.push_back(CentreClaim(facts));
  for (const Side side : kSides) {
    AddRooks(facts, side, claims);
    claims.push_back(SpaceClaim(facts, side));
  }
}

}  // namespace assay
