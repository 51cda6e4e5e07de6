// Puts what an explanation says into the words of a language.
#ifndef ASSAY_EXPLAIN_WORDING_H_
#define ASSAY_EXPLAIN_WORDING_H_

#include "assay/explain/catalogue.h"
#include "assay/explain/explanation.h"

namespace assay {

// Fills in every text from the message beside it.
void PutIntoWords(const Catalogue& words, Explanation& explanation);
void PutIntoWords(const Catalogue& words, ToldPlan& plan);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_WORDING_H_
