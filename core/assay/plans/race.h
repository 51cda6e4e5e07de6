#ifndef ASSAY_PLANS_RACE_H_
#define ASSAY_PLANS_RACE_H_
#include "assay/plans/draft.h"
namespace assay {
void Compare(const Outlook& white, const Outlook& black,
             std::vector<Plan>& whites, std::vector<Plan>& blacks);
}  // namespace assay
#endif
