// Kinds of claims that answer a question of one's choice, which the full list
// of claims answers for some squares only.
#ifndef ASSAY_TESTS_SUPPORT_QUESTIONS_H_
#define ASSAY_TESTS_SUPPORT_QUESTIONS_H_

#include "assay/facts/claim_kind.h"

namespace assay::testing_support {

// The auditor of tests/audit recomputes these one by one.
inline bool TakesAQuestion(ClaimKind kind) {
  const bool of_a_line =
      kind == ClaimKind::kLine || kind == ClaimKind::kBestReply ||
      (kind >= ClaimKind::kMateIn && kind <= ClaimKind::kBackRank) ||
      kind == ClaimKind::kSoleGuard;
  return of_a_line || kind == ClaimKind::kControl ||
         kind == ClaimKind::kAttackCount || kind == ClaimKind::kSiegeCount ||
         kind == ClaimKind::kKingDistance || kind == ClaimKind::kOutpostRoute;
}

}  // namespace assay::testing_support

#endif  // ASSAY_TESTS_SUPPORT_QUESTIONS_H_
