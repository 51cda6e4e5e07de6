// What a named pawn structure is and what it gives each side, in words.
//
// A handbook's chapter on a structure names files, squares and breaks; here
// those are told that are there in this position, and no others.
#ifndef ASSAY_EXPLAIN_STRUCTURE_NOTES_H_
#define ASSAY_EXPLAIN_STRUCTURE_NOTES_H_

#include "assay/explain/explanation.h"
#include "assay/facts/facts.h"

namespace assay {

// Names the most telling structure, with whose it is, and adds notes on it.
// Changes nothing where none has a name.
void NameStructure(const Facts& facts, ClaimTable& table, Structure& structure);

// "closed centre".
Message CentreName(Centre centre);

// The most telling structure without whose it is; where none has a name, the
// centre's kind.
Message StructureOrCentre(const Facts& facts);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_STRUCTURE_NOTES_H_
