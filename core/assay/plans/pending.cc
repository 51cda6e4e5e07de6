#include "assay/plans/draft.h"
namespace assay {
void DraftDevelopment(const Outlook&, std::vector<Draft>&) {}
void DraftFiles(const Outlook&, std::vector<Draft>&) {}
void DraftRestraints(const Outlook&, const std::vector<Plan>&,
                     std::vector<Draft>&) {}
}  // namespace assay
