// What each term costs: entries and nanoseconds a position, over the fixed
// positions, the dearest first.
//
//   build/bin/term_costs
//
// A term is charged with the time since the entry before it, so checks that
// found nothing count for the next term that found something.
#include <algorithm>
#include <iomanip>
#include <iostream>
#include <vector>

#include "assay/terms/ledger.h"
#include "bench/positions.h"

int main() {
  using namespace assay;
  constexpr int kRounds = 20;
  const std::vector<Position> positions = bench::ManyPositions();
  const Weights weights;
  TermCosts costs;
  for (int round = 0; round < kRounds; ++round) {
    for (const Position& position : positions) {
      AddTermCosts(Facts(position), weights, costs);
    }
  }
  std::vector<int> order;
  order.reserve(kTerms);
  for (int i = 0; i < kTerms; ++i) order.push_back(i);
  std::sort(order.begin(), order.end(), [&](int a, int b) {
    return costs.nanoseconds[a] > costs.nanoseconds[b];
  });
  const double all = static_cast<double>(positions.size()) * kRounds;
  std::cout << "term                  entries  ns a position\n" << std::fixed;
  for (const int i : order) {
    std::cout << std::left << std::setw(22) << Info(static_cast<TermId>(i)).name
              << std::right << std::setprecision(2) << std::setw(7)
              << static_cast<double>(costs.entries[i]) / all
              << std::setprecision(1) << std::setw(15)
              << static_cast<double>(costs.nanoseconds[i]) / all << "\n";
  }
  return 0;
}
