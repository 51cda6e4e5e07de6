// The pawn structure and the centre, named and described.
#ifndef ASSAY_EXPLAIN_STRUCTURE_H_
#define ASSAY_EXPLAIN_STRUCTURE_H_

#include "assay/explain/explanation.h"
#include "assay/facts/facts.h"

namespace assay {

Structure DescribeStructure(const Facts& facts, ClaimTable& table);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_STRUCTURE_H_
