#include "assay/explain/structure.h"

#include "assay/explain/structure_notes.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

constexpr Bitboard kCentralPair = FileMask(3) | FileMask(4);

// Rams of files c to f: "d4 against d5".
Message RamsOf(const Facts& facts) {
  std::vector<Message> rams;
  for (const Square pawn : Each(facts.CentreRams(Side::kWhite))) {
    rams.push_back(Say("ram", pawn, First(Forward(Side::kWhite, Bit(pawn)))));
  }
  return And(std::move(rams));
}

// Whose centre is mobile: the side with more than one pawn there.
Side OwnerOfMobileCentre(const Facts& facts) {
  const Bitboard white = facts.Pawns(Side::kWhite).pawns & kCentralPair;
  return HasMany(white) ? Side::kWhite : Side::kBlack;
}

Message NoteOf(const Facts& facts, const Claim& centre) {
  switch (facts.centre()) {
    case Centre::kOpen:
      return Say("centre.open");
    case Centre::kClosed:
      return Say("centre.closed", RamsOf(facts));
    case Centre::kFixed:
      return Say("centre.fixed", RamsOf(facts));
    case Centre::kTension:
      return Say("centre.tension", Squares{centre.squares.ToSet()},
                 Squares{centre.others.ToSet()});
    case Centre::kMobile: {
      const Side owner = OwnerOfMobileCentre(facts);
      return Say("centre.mobile", owner,
                 Squares{facts.Pawns(owner).pawns & kCentralPair});
    }
    case Centre::kUnresolved:
      break;
  }
  return Say("centre.unresolved");
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
  structure.notes_said.push_back(Sentence(NoteOf(facts, centre)));
  return structure;
}

}  // namespace assay
