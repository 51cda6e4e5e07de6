// Where a game turns: the count shifts to another verdict, the centre becomes
// of another type, or a plan that was in time no longer is.
#ifndef ASSAY_LESSON_TURNING_POINTS_H_
#define ASSAY_LESSON_TURNING_POINTS_H_

#include <atomic>
#include <map>
#include <string>

#include "assay/explain/assayer.h"
#include "assay/explain/catalogue.h"
#include "assay/notation/pgn_tree.h"

namespace assay {

// The nodes of the main line where the game turns, each with what turns: "the
// centre becomes closed". Static; positions in the middle of an exchange are
// passed over. Ends
// early where `cancelled` turns true; it may be null.
std::map<NodeIndex, std::string> TurningPoints(
    const GameTree& tree, const Assayer& assayer,
    const std::atomic<bool>* cancelled,
    const Catalogue& words = Catalogue::English());

}  // namespace assay

#endif  // ASSAY_LESSON_TURNING_POINTS_H_
