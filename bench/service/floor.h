// The floor: a server that answers Explain with bytes that it had all along.
// What a call takes there is what the transport takes.
#ifndef ASSAY_BENCH_SERVICE_FLOOR_H_
#define ASSAY_BENCH_SERVICE_FLOOR_H_

#include <string>
#include <vector>

#include "assay/rules/position.h"
#include "assay/v1/explainer.pb.h"

namespace assay::bench {

// A static request for the n-th position; its tag is n.
v1::ExplainRequest RequestOf(const std::vector<Position>& positions,
                             std::size_t n);

// Serves until it is killed; says its address on standard error first.
[[noreturn]] void ServeFloor();

}  // namespace assay::bench

#endif  // ASSAY_BENCH_SERVICE_FLOOR_H_
