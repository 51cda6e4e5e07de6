// The score-only path allocates nothing. In a program of its own, since it
// replaces the global allocation functions.
#include <cstdlib>
#include <new>
#include <vector>

#include "gtest/gtest.h"
#include "tests/support/ledgers.h"
#include "tests/support/random_play.h"

namespace {
long long allocations = 0;
}  // namespace

// The array forms call these by default.
void* operator new(std::size_t size) {
  ++allocations;
  void* memory = std::malloc(size == 0 ? 1 : size);
  if (memory == nullptr) throw std::bad_alloc();
  return memory;
}
// Inlined, they would look to the compiler like free() after new.
[[gnu::noinline]] void operator delete(void* memory) noexcept {
  std::free(memory);
}
[[gnu::noinline]] void operator delete(void* memory,
                                       std::size_t /*size*/) noexcept {
  std::free(memory);
}

namespace assay {
namespace {

TEST(ScoreOf, AllocatesNothing) {
  std::vector<Position> positions;
  testing_support::PlayAtRandom(21, 5000,
                                [&](const Position& position, Move /*next*/) {
                                  positions.push_back(position);
                                });
  const Weights weights;
  long long sum = 0;
  const long long before = allocations;
  for (const Position& position : positions) {
    sum += ScoreOf(position, weights);
  }
  EXPECT_EQ(allocations, before) << "sum of scores " << sum;
}

// So that the test above cannot pass by not counting.
TEST(Counter, SeesTheLedgersAllocations) {
  const long long before = allocations;
  const Ledger ledger = testing_support::LedgerOf(Position::Initial());
  EXPECT_GT(allocations, before) << ledger.entries.size();
}

}  // namespace
}  // namespace assay
