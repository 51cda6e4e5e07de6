// How often memory is asked for. A program that links allocations.cc counts
// every operator new of its own.
#ifndef ASSAY_BENCH_ALLOCATIONS_H_
#define ASSAY_BENCH_ALLOCATIONS_H_

#include <cstdint>

namespace assay::bench {

// Calls since the program began, on any thread.
std::uint64_t Allocations();

}  // namespace assay::bench

#endif  // ASSAY_BENCH_ALLOCATIONS_H_
