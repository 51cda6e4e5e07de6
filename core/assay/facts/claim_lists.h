// Every claim that holds of a position, family by family.
//
// Kinds that take a question are answered for the questions that matter, see
// siege_claims.cc: CONTROL of the centre squares, ATTACK_COUNT and SIEGE_COUNT
// of weak pawns and attacked pieces, KING_DISTANCE of passed pawns. Claims
// after a line are left out.
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
void AddStructureClaims(const Facts& facts, std::vector<Claim>& claims);
void AddPieceClaims(const Facts& facts, std::vector<Claim>& claims);
void AddKingClaims(const Facts& facts, std::vector<Claim>& claims);
void AddEndingClaims(const Facts& facts, std::vector<Claim>& claims);
void AddTextbookClaims(const Facts& facts, std::vector<Claim>& claims);
void AddSiegeClaims(const Facts& facts, std::vector<Claim>& claims);

}  // namespace assay

#endif  // ASSAY_FACTS_CLAIM_LISTS_H_
