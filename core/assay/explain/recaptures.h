// A capture and the captures on its square that follow by count alone.
#ifndef ASSAY_EXPLAIN_RECAPTURES_H_
#define ASSAY_EXPLAIN_RECAPTURES_H_

#include <vector>

#include "assay/rules/position.h"

namespace assay {

// The legal move first. One move alone where it takes nothing, or where nothing
// is taken back. No search.
std::vector<Move> WithRecaptures(const Position& position, Move move);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_RECAPTURES_H_
