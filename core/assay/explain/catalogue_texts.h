// The files catalogue/*.txt, word for word; made when the library is built.
#ifndef ASSAY_EXPLAIN_CATALOGUE_TEXTS_H_
#define ASSAY_EXPLAIN_CATALOGUE_TEXTS_H_

namespace assay {

extern const char kEnglishCatalogue[];
extern const char kGermanCatalogue[];

}  // namespace assay

#endif  // ASSAY_EXPLAIN_CATALOGUE_TEXTS_H_
