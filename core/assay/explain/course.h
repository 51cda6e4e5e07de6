// A line of moves as a course of events: at which move the verdict, the
// structure or a plan's standing changed, and why.
#ifndef ASSAY_EXPLAIN_COURSE_H_
#define ASSAY_EXPLAIN_COURSE_H_

#include <string>
#include <vector>

#include "assay/explain/assayer.h"

namespace assay {

struct Turn {
  enum class Kind { kVerdict, kStructure, kPlan };

  std::size_t ply = 0;  // index of the move that did it
  Kind kind = Kind::kVerdict;
  std::string text;
  Message said;
  ClaimRefs claims;
};

struct Course {
  std::vector<Turn> turns;    // in the line's order
  std::vector<Claim> claims;  // about the start; most hold after a line
};

// The line is legal. Each position gets the options' nodes; with static_only
// nothing is searched, and positions in the middle of an exchange are not
// judged. Stops early where the options' flag says so.
Course FollowLine(const Assayer& assayer, const Position& start,
                  const std::vector<Move>& line,
                  const ExplainOptions& options = {});

}  // namespace assay

#endif  // ASSAY_EXPLAIN_COURSE_H_
