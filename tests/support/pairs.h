// Two positions of which a side must prefer one: what the trade teaches, asked
// of the evaluator.
#ifndef ASSAY_TESTS_SUPPORT_PAIRS_H_
#define ASSAY_TESTS_SUPPORT_PAIRS_H_

#include <initializer_list>

#include "gtest/gtest.h"
#include "tests/support/from_pieces.h"
#include "tests/support/ledgers.h"
#include "tests/support/rows.h"

namespace assay {
namespace testing_support {

// Positions for FromPieces() that differ in one feature of White's and as
// little else as chess allows.
struct Pair : Row {
  const char* better;  // for White
  const char* worse;
};

// A pair seen from White's side, then with the colours swapped.
class Pairs : public ::testing::TestWithParam<Pair> {
 protected:
  // measure(position, side) is larger in the better position.
  template <class Measure>
  void ExpectBetter(Measure measure) const {
    const Position better = FromPieces(GetParam().better);
    const Position worse = FromPieces(GetParam().worse);
    EXPECT_GT(measure(better, Side::kWhite), measure(worse, Side::kWhite));
    EXPECT_GT(measure(SwapColours(better), Side::kBlack),
              measure(SwapColours(worse), Side::kBlack));
  }

  // So is what the side's entries of some terms come to.
  void ExpectBetterBy(std::initializer_list<TermId> terms) const {
    ExpectBetter([terms](const Position& position, Side side) {
      return SumFor(position, side, terms);
    });
  }
};

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_PAIRS_H_
