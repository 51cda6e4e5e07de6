#include "assay/explain/structure.h"

#include "assay/explain/structure_notes.h"
#include "assay/explain/words.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

constexpr Bitboard kCentralPair = FileMask(3) | FileMask(4);

// Rams of files c to f: "d4 against d5".
std::string RamsText(const Facts& facts) {
  std::vector<std::string> rams;
  for (const Square pawn : Each(facts.CentreRams(Side::kWhite))) {
    rams.push_back(ToString(pawn) + " against " +
                   ToString(First(Forward(Side::kWhite, Bit(pawn)))));
  }
  return Join(rams);
}

// Whose centre is mobile: the side with more than one pawn there.
Side OwnerOfMobileCentre(const Facts& facts) {
  const Bitboard white = facts.Pawns(Side::kWhite).pawns & kCentralPair;
  return HasMany(white) ? Side::kWhite : Side::kBlack;
}

std::string NoteOf(const Facts& facts, const Claim& centre) {
  switch (facts.centre()) {
    case Centre::kOpen:
      return "No pawns block the centre: at most one is left on the d- and "
             "e-files.";
    case Centre::kClosed:
      return "The pawns are locked: " + RamsText(facts) + ".";
    case Centre::kFixed:
      return "One pair of pawns is fixed: " + RamsText(facts) + ".";
    case Centre::kTension:
      return "Pawns can take each other: White's on " +
             SquaresText(centre.squares.ToSet()) + ", Black's on " +
             SquaresText(centre.others.ToSet()) + ".";
    case Centre::kMobile: {
      const Side owner = OwnerOfMobileCentre(facts);
      return std::string(Name(owner)) + "'s centre pawns on " +
             SquaresText(facts.Pawns(owner).pawns & kCentralPair) +
             " are not held up by rams.";
    }
    case Centre::kUnresolved:
      break;
  }
  return "The centre is of none of the usual types.";
}

}  // namespace

Structure DescribeStructure(const Facts& facts, ClaimTable& table) {
  Structure structure;
  structure.centre = facts.centre();
  NameStructure(facts, table, structure);
  const Claim centre = CentreClaim(facts);
  table.Add(centre, structure.claims);
  if (facts.centre() == Centre::kFixed || facts.centre() == Centre::kClosed) {
    for (const Square pawn : Each(facts.CentreRams(Side::kWhite))) {
      table.Add(RamClaim(Side::kWhite, pawn), structure.claims);
    }
  }
  if (facts.centre() == Centre::kMobile) {
    table.Add(
        MaterialClaim(facts, OwnerOfMobileCentre(facts), PieceKind::kPawn),
        structure.claims);
  }
  structure.notes.push_back(NoteOf(facts, centre));
  return structure;
}

}  // namespace assay
