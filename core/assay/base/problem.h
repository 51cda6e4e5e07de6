// What is wrong with an input: the one shape that every error has. A Problem
// names the field, the reason, what was found and what was expected.
#ifndef ASSAY_BASE_PROBLEM_H_
#define ASSAY_BASE_PROBLEM_H_

#include <string>
#include <string_view>

namespace assay {

struct Problem {
  std::string field;     // e.g. "placement", "castling", "move"
  std::string reason;    // e.g. "no king", "ambiguous move"
  std::string found;     // the offending text or value, shortened
  std::string expected;  // what would have been right

  friend bool operator==(const Problem& a, const Problem& b) {
    return a.field == b.field && a.reason == b.reason && a.found == b.found &&
           a.expected == b.expected;
  }
};

// "placement: no king: found 0 black kings, expected 1".
std::string ToString(const Problem& problem);

// Text for an error message: at most 40 bytes of it, bytes that are not
// printable ASCII written as \xNN, in double quotes.
std::string Quoted(std::string_view text);

}  // namespace assay

#endif  // ASSAY_BASE_PROBLEM_H_
