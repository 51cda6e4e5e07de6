// What to look for in a file of games, said in a word each.
//
//   centre=closed              the type of centre
//   structure=hedgehog         a structure whose name has this word in it
//   claim=doubled@white        a claim holds, of a side or of any
//   term=bad_bishop@black      the ledger has an entry of the term
//   plan=siege@black           a plan of the kind is among the best
//   plan=siege@black:in_time   ... and stands so: in_time, slow, stopped, needs
//   verdict>=slight@white      who stands better: equal, slight, moderate,
//                              decisive, crushing; with =, <, >, <=, >=
//   score>=50                  centipawns, White's view; the same comparisons
//   move=black                 who is to move
//
// "not:" before a condition turns it round. A side is white, black, mover (to
// move) or waiter (not to move).
#ifndef ASSAY_LESSON_CONDITION_H_
#define ASSAY_LESSON_CONDITION_H_

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "absl/status/statusor.h"
#include "assay/explain/assayer.h"

namespace assay {

class Condition {
 public:
  // INVALID_ARGUMENT with a Problem of field "condition".
  static absl::StatusOr<Condition> Parse(std::string_view text);

  bool Holds(const Explanation& explanation) const {
    return test_(explanation) != negated_;
  }
  // Whether the explanation has to have all claims.
  bool needs_all_claims() const { return needs_all_claims_; }

 private:
  std::function<bool(const Explanation&)> test_;
  bool negated_ = false;
  bool needs_all_claims_ = false;
};

}  // namespace assay

#endif  // ASSAY_LESSON_CONDITION_H_
