// Puts what an explanation says into the words of a language.
#ifndef ASSAY_EXPLAIN_WORDING_H_
#define ASSAY_EXPLAIN_WORDING_H_

#include "assay/explain/catalogue.h"
#include "assay/explain/explanation.h"

namespace assay {

struct Comparison;
struct LedgerChange;
struct MoveExplanation;
struct WhatIf;

// Fills in every text from the message beside it. The summary opens in the way
// of that number.
void PutIntoWords(const Catalogue& words, Explanation& explanation,
                  std::size_t opening = 0);
void PutIntoWords(const Catalogue& words, ToldPlan& plan);
void PutIntoWords(const Catalogue& words, LedgerChange& change);
void PutIntoWords(const Catalogue& words, MoveExplanation& told);
// What decides; its explanations are in words already, but for newcomers, who
// are told what a trade word means once in all of them.
void PutIntoWords(const Catalogue& words, Comparison& comparison);
void PutIntoWords(const Catalogue& words, WhatIf& told);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_WORDING_H_
