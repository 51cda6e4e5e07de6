// Why a static verdict may mislead: a check, something that hangs.
#ifndef ASSAY_EXPLAIN_CAUTIONS_H_
#define ASSAY_EXPLAIN_CAUTIONS_H_

#include <vector>

#include "assay/explain/explanation.h"
#include "assay/facts/facts.h"

namespace assay {

// The gravest first. None for a position that is over.
std::vector<Caution> FindCautions(const Facts& facts, ClaimTable& table);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_CAUTIONS_H_
