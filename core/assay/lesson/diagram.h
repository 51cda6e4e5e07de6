// A position as a drawing: board, pieces, marked squares, routes of plans.
//
// Everything is told apart by shape and pattern as well as by colour, so that
// a black-and-white print loses nothing: dark squares are hatched, squares
// that count for White dotted, for Black crossed; White's routes are whole
// lines, Black's dashed, both in ink.
#ifndef ASSAY_LESSON_DIAGRAM_H_
#define ASSAY_LESSON_DIAGRAM_H_

#include <string>
#include <vector>

#include "assay/base/bitboard.h"
#include "assay/explain/catalogue.h"
#include "assay/rules/position.h"

namespace assay {

// A side's moves, one after another.
struct DrawnRoute {
  Side side = Side::kWhite;
  std::vector<Move> moves;
};

struct DiagramMarks {
  Bitboard for_white = 0;
  Bitboard for_black = 0;
  std::vector<DrawnRoute> routes;
};

// Shapes and patterns that diagrams refer to: once in each document.
std::string DiagramDefinitions();

// One diagram, seen from White's side, with its description for readers who
// do not see it.
std::string Diagram(const Position& position, const DiagramMarks& marks,
                    const Catalogue& words = Catalogue::English());

// "White: king g1, queen d1, ...; Black: ...; White to move."
std::string DescribeBoard(const Position& position,
                          const Catalogue& words = Catalogue::English());

}  // namespace assay

#endif  // ASSAY_LESSON_DIAGRAM_H_
