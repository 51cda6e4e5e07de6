/* Assay for C, and for every language that can call C.
 *
 *   assay_explainer* explainer = NULL;
 *   char* json = NULL;
 *   char* error = NULL;
 *   if (assay_explainer_new(NULL, &explainer, &error) != ASSAY_OK ||
 *       assay_explain_json(explainer, fen, NULL, &json, &error) != ASSAY_OK) {
 *     fprintf(stderr, "%s\n", error);
 *   } else {
 *     puts(json);
 *   }
 *   assay_string_free(json);
 *   assay_string_free(error);
 *   assay_explainer_free(explainer);
 *
 * Errors. A function that can fail returns a code. Its result is written only
 * on ASSAY_OK; on anything else `*error` is a message of one line, in English,
 * that names every fault. `error` may be NULL for who does not want it. What
 * `*result` and `*error` pointed to before is not looked at nor freed. NULL for
 * another argument, where that is not said to be allowed, is
 * ASSAY_INVALID_ARGUMENT.
 *
 * Ownership. What a function hands out is the caller's, to be given back once:
 * strings with assay_string_free, explainers with assay_explainer_free; both
 * take NULL. What a caller passes in stays his and is not kept. Strings that
 * are returned as `const char*` live as long as the library.
 *
 * Threads. Any thread may call any function at any time. An explainer never
 * changes; any number of threads may share one, as long as it is freed after
 * the last of them is done.
 *
 * No exception leaves the library, and nothing is printed. Equal positions,
 * options and weights give equal bytes. The library registers its messages
 * with protobuf: do not load it into a process that links assay::proto, too.
 *
 * Functions and fields are added, never changed, within one major version. */
#ifndef ASSAY_ASSAY_C_H_
#define ASSAY_ASSAY_C_H_

#include <stddef.h>
#include <stdint.h>

#if defined(__GNUC__)
#define ASSAY_API __attribute__((visibility("default")))
#else
#define ASSAY_API
#endif

#ifdef __cplusplus
extern "C" {
#endif

/* C has no "using". NOLINTBEGIN(modernize-use-using) */

/* The numbers of the same names in gRPC. */
typedef enum assay_code {
  ASSAY_OK = 0,
  ASSAY_INVALID_ARGUMENT = 3,   /* what was passed in; the message says what */
  ASSAY_RESOURCE_EXHAUSTED = 8, /* out of memory; nothing is left behind */
  ASSAY_INTERNAL = 13           /* a fault of the library's */
} assay_code;

/* For whom texts are written: they differ in words, never in a value. */
typedef enum assay_audience {
  ASSAY_AUDIENCE_NEWCOMER = 1, /* each trade word is explained; no values */
  ASSAY_AUDIENCE_CLUB = 2,     /* trade words in whole sentences */
  ASSAY_AUDIENCE_EXPERT = 3    /* terse, with squares and values */
} assay_audience;

/* The evaluator with its weights. */
typedef struct assay_explainer assay_explainer;

/* Zeroed but for its size, it asks for the defaults:
 *   assay_explain_options options = {sizeof options};  */
typedef struct assay_explain_options {
  size_t size;          /* of this struct, as the caller knows it */
  int32_t static_only;  /* not 0: no search; some 100 times faster */
  int32_t all_claims;   /* not 0: every claim that holds, used or not */
  uint64_t proof_nodes; /* nodes to search; 0: the default */
  const char* language; /* of the texts, a BCP 47 tag; NULL: English */
  int32_t audience;     /* an assay_audience; 0: club players */
} assay_explain_options;

/* NOLINTEND(modernize-use-using) */

/* The library's version, as "0.1.0", and that of its catalogue of terms, which
 * rises when a term is added, removed or defined anew. */
ASSAY_API const char* assay_version(void);
ASSAY_API int32_t assay_catalogue_version(void);

/* `weights` is the text of a weights file (`assay terms --format weights`
 * writes one); NULL: the defaults. */
ASSAY_API assay_code assay_explainer_new(const char* weights,
                                         assay_explainer** explainer,
                                         char** error);
ASSAY_API void assay_explainer_free(assay_explainer* explainer);

/* The static score of a position, in centipawns from White's view. */
ASSAY_API assay_code assay_score(const assay_explainer* explainer,
                                 const char* fen, int32_t* score_cp,
                                 char** error);

/* The position explained: the Explanation of the public contract
 * (assay/v1/explanation.proto) as protobuf JSON in one line, the same as that
 * of `assay explain --format json`. `options` may be NULL. */
ASSAY_API assay_code assay_explain_json(const assay_explainer* explainer,
                                        const char* fen,
                                        const assay_explain_options* options,
                                        char** json, char** error);

ASSAY_API void assay_string_free(char* string);

#ifdef __cplusplus
} /* extern "C" */
#endif

#endif /* ASSAY_ASSAY_C_H_ */
