// What each term costs: see bench/costs/costs.cc.
//
//   build/bin/term_costs [--json FILE | -]
#include "bench/own_term.h"

int main(int argc, char** argv) {
  return assay::bench::MeasureCosts(argc, argv);
}
