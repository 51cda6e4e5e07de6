// Which reason a strong player would name first.
#ifndef ASSAY_EXPLAIN_RANKING_H_
#define ASSAY_EXPLAIN_RANKING_H_

#include <vector>

#include "assay/explain/explanation.h"
#include "assay/explain/group.h"

namespace assay {

// What is momentary is named after what stays, but for who is the stronger
// about a king: attacks on kings go first. Own reasoning.
bool CountsByHalf(TermId term);

// What a group of entries is ranked by, in centipawns for the side that it
// favours: its value, but by half what CountsByHalf, and by half what is
// general (space), since what can be pointed at on the board goes before it.
// Own reasoning.
Centipawns RankOf(Topic topic, const Group& group);

// Sorts by rank, the highest first, but for two habits of the trade (own
// reasoning; tests/explain/main_features.tsv has what is expected of it):
//
//   * What follows from something is named after it. More active pieces come
//     of better development, space, open files or a weak pawn to play against,
//     so the heaviest such reason of the same side takes activity's place where
//     that is higher, and activity comes right behind it. It has to be
//     worth a third as much: else most of the activity comes of something else.
//   * Fine points come last: whose move it is, what the number of pawns does
//     for knights and rooks, and what stands behind a pawn.
void RankReasons(std::vector<Reason>& reasons);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_RANKING_H_
