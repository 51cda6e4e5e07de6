// The files catalogue/*.txt, word for word; made when the library is built.
#ifndef ASSAY_EXPLAIN_CATALOGUE_TEXTS_H_
#define ASSAY_EXPLAIN_CATALOGUE_TEXTS_H_

namespace assay {

extern const char kEnglishCatalogue[];
extern const char kEnglishNewcomer[];
extern const char kEnglishExpert[];
extern const char kGermanCatalogue[];
extern const char kGermanNewcomer[];
extern const char kGermanExpert[];

}  // namespace assay

#endif  // ASSAY_EXPLAIN_CATALOGUE_TEXTS_H_
