// Every claim that holds of a position, family by family.
//
// The lists leave out claims that take a question: CONTROL of a square of
// one's choice, ATTACK_COUNT, SIEGE_COUNT, KING_DISTANCE, claims after a line.
#ifndef ASSAY_FACTS_CLAIM_LISTS_H_
#define ASSAY_FACTS_CLAIM_LISTS_H_

#include <vector>

#include "assay/facts/claim.h"
#include "assay/facts/facts.h"

namespace assay {

// All that follow, in this order.
std::vector<Claim> AllClaims(const Facts& facts);

// Each adds the claims of one family to the end of `claims`.
void AddPawnClaims(const Facts& facts, std::vector<Claim>& claims);
void AddCentreClaims(const Facts& facts, std::vector<Claim>& claims);
void AddPieceClaims(const Facts& facts, std::vector<Claim>& claims);
void AddKingClaims(const Facts& facts, std::vector<Claim>& claims);
void AddEndingClaims(const Facts& facts, std::vector<Claim>& claims);

}  // namespace assay

#endif  // ASSAY_FACTS_CLAIM_LISTS_H_
