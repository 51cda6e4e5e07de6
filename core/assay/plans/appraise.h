#ifndef ASSAY_PLANS_APPRAISE_H_
#define ASSAY_PLANS_APPRAISE_H_
#include "assay/plans/draft.h"
namespace assay {
Plan Appraise(const Outlook& outlook, const Draft& draft);
}  // namespace assay
#endif
