// The library alone, in a program of your own: says who stands better in a
// position and why, or what is wrong with its FEN.
//
//   embed "r1bq1rk1/p4ppp/1pn1pn2/2pp4/3P1B2/2PBPN2/P1P2PPP/R2Q1RK1 w - - 0 10"
#include <iostream>

#include "assay/assay.h"

int main(int argc, char** argv) {
  if (argc != 2) {
    std::cerr << "usage: embed FEN\n";
    return 2;
  }
  const absl::StatusOr<assay::Position> position =
      assay::PositionFromFen(argv[1]);
  if (!position.ok()) {
    std::cerr << position.status().message() << '\n';
    return 1;
  }
  // Made once, shared by all threads; it never changes.
  const assay::Assayer assayer;
  const assay::Explanation explanation = assayer.Explain(*position);
  std::cout << explanation.summary << '\n';
  for (const assay::Reason& reason : explanation.reasons) {
    std::cout << "  " << reason.value_cp << " cp for White: " << reason.text
              << '\n';
  }
  for (const assay::ToldPlan& plan : explanation.plans) {
    std::cout << "  plan: " << plan.text << '\n';
  }
  return 0;
}
