// The claims of one explanation, each kept once.
#ifndef ASSAY_EXPLAIN_CLAIM_TABLE_H_
#define ASSAY_EXPLAIN_CLAIM_TABLE_H_

#include <cstddef>
#include <cstdint>
#include <vector>

#include "assay/facts/claim.h"

namespace assay {

// Indices of claims, in the order in which they were added, each once.
using ClaimRefs = std::vector<std::uint32_t>;

class ClaimTable {
 public:
  // The index of the claim, added where it is new.
  std::uint32_t Add(const Claim& claim);
  // Adds the claim and notes its index in `refs`, once.
  void Add(const Claim& claim, ClaimRefs& refs);

  // Makes room for so many more claims.
  void Reserve(std::size_t more) { claims_.reserve(claims_.size() + more); }

  const std::vector<Claim>& claims() const { return claims_; }
  std::vector<Claim> Take() { return std::move(claims_); }

 private:
  std::vector<Claim> claims_;
};

// Adds those indices that `refs` does not have yet.
void Merge(const ClaimRefs& from, ClaimRefs& refs);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_CLAIM_TABLE_H_
