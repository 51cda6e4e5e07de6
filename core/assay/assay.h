// Assay: a chess position evaluator and explainer. The umbrella header.
//
// 1. Read a position: PositionFromFen(fen) gives a Position or a Status that
//    lists every fault (notation/fen.h, rules/position.h).
// 2. Make an Assayer once, with the default Weights or your own
//    (explain/assayer.h, terms/weights.h).
// 3. Ask: Score() for centipawns alone, Explain() for verdict, reasons and
//    ledger; ToText() for a terminal (explain/text.h).
// 4. Ask about moves: ExplainMove(), Compare(), AskWhatIf(), FollowLine().
// 5. For a whole PGN file: Lesson and LessonReader give its key positions
//    (lesson/key_positions.h), the handout is lesson/handout.h.
//
// Scores are centipawns from White's point of view everywhere. Nothing in the
// library prints, throws or aborts on input.
#ifndef ASSAY_ASSAY_H_
#define ASSAY_ASSAY_H_

#include "assay/explain/assayer.h"
#include "assay/explain/comparison.h"
#include "assay/explain/course.h"
#include "assay/explain/move_explanation.h"
#include "assay/explain/text.h"
#include "assay/explain/what_if.h"
#include "assay/lesson/handout.h"
#include "assay/lesson/key_positions.h"
#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "assay/terms/term.h"
#include "assay/terms/weights.h"
#include "assay/terms/weights_text.h"

#endif  // ASSAY_ASSAY_H_
