// Why a static verdict may mislead: a check, something that hangs.
#ifndef ASSAY_EXPLAIN_CAUTIONS_H_
#define ASSAY_EXPLAIN_CAUTIONS_H_

#include <vector>

#include "assay/explain/explanation.h"
#include "assay/facts/facts.h"

namespace assay {

// The gravest first. None for a position that is over.
std::vector<Caution> FindCautions(const Facts& facts, ClaimTable& table);

// What search found where the count alone misleads, first among the cautions;
// and, where search and count agree, no more talk of what hangs.
void AddProof(const Facts& facts, const Proof& proof, Centipawns static_cp,
              ClaimTable& table, std::vector<Caution>& cautions);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_CAUTIONS_H_
