#include "assay/explain/claim_table.h"

#include <algorithm>

namespace assay {
namespace {

constexpr std::size_t kUsualRefs = 4;

void AddOnce(std::uint32_t ref, ClaimRefs& refs) {
  if (std::find(refs.begin(), refs.end(), ref) != refs.end()) return;
  if (refs.capacity() == 0) refs.reserve(kUsualRefs);
  refs.push_back(ref);
}

}  // namespace

std::uint32_t ClaimTable::Add(const Claim& claim) {
  const auto found = std::find(claims_.begin(), claims_.end(), claim);
  if (found == claims_.end()) {
    claims_.push_back(claim);
    return static_cast<std::uint32_t>(claims_.size() - 1);
  }
  return static_cast<std::uint32_t>(found - claims_.begin());
}

void ClaimTable::Add(const Claim& claim, ClaimRefs& refs) {
  AddOnce(Add(claim), refs);
}

void Merge(const ClaimRefs& from, ClaimRefs& refs) {
  for (const std::uint32_t ref : from) AddOnce(ref, refs);
}

}  // namespace assay
