// Which reason a strong player would name first.
#ifndef ASSAY_EXPLAIN_RANKING_H_
#define ASSAY_EXPLAIN_RANKING_H_

#include <vector>

#include "assay/explain/explanation.h"

namespace assay {

// Sorts by weight, the heaviest first, but for two habits of the trade (own
// reasoning; tests/explain/main_features.tsv has what is expected of it):
//
//   * What follows from something is named after it. More active pieces come
//     of better development, space, open files or a weak pawn to play against,
//     so the heaviest such reason of the same side takes activity's place where
//     that is higher, and activity comes right behind it.
//   * Fine points come last: whose move it is, and what the number of pawns
//     does for knights and rooks.
void RankReasons(std::vector<Reason>& reasons);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_RANKING_H_
