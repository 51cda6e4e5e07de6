/* The C interface from C: results, errors, ownership, threads, no memory left.
 * Compiled as C99; says what does not hold and ends with 1. */
#define _POSIX_C_SOURCE 200809L
#include "assay/assay_c.h"

#include <pthread.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>

static int failures = 0;

#define EXPECT(condition)                                              \
  do {                                                                 \
    if (!(condition)) {                                                \
      fprintf(stderr, "%s:%d: %s\n", __FILE__, __LINE__, #condition);  \
      ++failures;                                                      \
    }                                                                  \
  } while (0)

static const char kRookDown[] = "r3k3/8/8/8/8/8/4P3/4K3 w - - 0 1";
/* The same with the colours swapped. */
static const char kRookUp[] = "4k3/4p3/8/8/8/8/8/R3K3 b - - 0 1";

static void TestVersions(void) {
  EXPECT(strcmp(assay_version(), "0.1.0") == 0);
  EXPECT(assay_catalogue_version() > 0);
}

static void TestScore(const assay_explainer* explainer) {
  int32_t down = 0;
  int32_t up = 0;
  char* error = NULL;
  EXPECT(assay_score(explainer, kRookDown, &down, &error) == ASSAY_OK);
  EXPECT(assay_score(explainer, kRookUp, &up, NULL) == ASSAY_OK);
  EXPECT(error == NULL);
  EXPECT(down < -200);
  EXPECT(up == -down);
}

static void TestErrors(const assay_explainer* explainer) {
  int32_t score = 77;
  char* json = NULL;
  char* error = NULL;
  EXPECT(assay_score(explainer, "8/8 w KX -", &score, &error) ==
         ASSAY_INVALID_ARGUMENT);
  EXPECT(score == 77);
  EXPECT(error != NULL && strstr(error, "placement") != NULL &&
         strstr(error, "castling") != NULL);
  assay_string_free(error);

  error = NULL;
  EXPECT(assay_explain_json(explainer, "", NULL, &json, &error) ==
         ASSAY_INVALID_ARGUMENT);
  EXPECT(json == NULL && error != NULL);
  assay_string_free(error);

  /* A text that goes on and on is not read to its end. */
  char* huge = malloc(1 << 20);
  memset(huge, '8', (1 << 20) - 1);
  huge[(1 << 20) - 1] = '\0';
  EXPECT(assay_score(explainer, huge, &score, NULL) == ASSAY_INVALID_ARGUMENT);
  free(huge);

  EXPECT(assay_score(NULL, kRookUp, &score, NULL) == ASSAY_INVALID_ARGUMENT);
  EXPECT(assay_score(explainer, NULL, &score, NULL) == ASSAY_INVALID_ARGUMENT);
  EXPECT(assay_score(explainer, kRookUp, NULL, NULL) ==
         ASSAY_INVALID_ARGUMENT);
  EXPECT(assay_explain_json(explainer, kRookUp, NULL, NULL, NULL) ==
         ASSAY_INVALID_ARGUMENT);
  EXPECT(assay_explainer_new(NULL, NULL, NULL) == ASSAY_INVALID_ARGUMENT);
  assay_string_free(NULL);
  assay_explainer_free(NULL);
}

static void TestWeights(void) {
  assay_explainer* heavy = NULL;
  assay_explainer* none = NULL;
  char* error = NULL;
  EXPECT(assay_explainer_new("rook 2000 2000\n", &heavy, &error) == ASSAY_OK);
  int32_t score = 0;
  EXPECT(assay_score(heavy, kRookDown, &score, NULL) == ASSAY_OK);
  EXPECT(score < -1700);
  assay_explainer_free(heavy);
  EXPECT(assay_explainer_new("castle 5 5\n", &none, &error) ==
         ASSAY_INVALID_ARGUMENT);
  EXPECT(none == NULL && error != NULL && strstr(error, "castle") != NULL);
  assay_string_free(error);
}

static void TestOptions(const assay_explainer* explainer) {
  assay_explain_options options = {sizeof options, 1, 0, 0, NULL, 0};
  char* json = NULL;
  EXPECT(assay_explain_json(explainer, kRookDown, &options, &json, NULL) ==
         ASSAY_OK);
  EXPECT(json != NULL && strstr(json, "\"scoreCp\"") != NULL);
  EXPECT(json != NULL && strstr(json, "\"proof\"") == NULL);
  assay_string_free(json);

  /* From a caller who knows the first field alone: the others are defaults. */
  options.size = offsetof(assay_explain_options, all_claims);
  options.language = "xx";
  EXPECT(assay_explain_json(explainer, kRookDown, &options, &json, NULL) ==
         ASSAY_OK);
  assay_string_free(json);

  options.size = sizeof options;
  char* error = NULL;
  EXPECT(assay_explain_json(explainer, kRookDown, &options, &json, &error) ==
         ASSAY_INVALID_ARGUMENT);
  EXPECT(error != NULL && strstr(error, "language") != NULL);
  assay_string_free(error);
  options.size = 0;
  EXPECT(assay_explain_json(explainer, kRookDown, &options, &json, NULL) ==
         ASSAY_INVALID_ARGUMENT);
}

/* Of who has an isolated pawn: newcomers are told what that is, experts are
 * told figures, and the club is the default. */
static void TestAudiences(const assay_explainer* explainer) {
  static const char kIsolated[] =
      "4k3/pp3ppp/8/8/3P4/8/PP3PPP/4K3 w - - 0 1";
  char* told[4] = {NULL, NULL, NULL, NULL};
  for (int audience = 0; audience < 4; ++audience) {
    assay_explain_options options = {sizeof options, 1, 0, 0, NULL, audience};
    EXPECT(assay_explain_json(explainer, kIsolated, &options, &told[audience],
                              NULL) == ASSAY_OK);
    EXPECT(told[audience] != NULL);
  }
  EXPECT(strcmp(told[0], told[ASSAY_AUDIENCE_CLUB]) == 0);
  EXPECT(strcmp(told[ASSAY_AUDIENCE_CLUB], told[ASSAY_AUDIENCE_NEWCOMER]) != 0);
  EXPECT(strcmp(told[ASSAY_AUDIENCE_CLUB], told[ASSAY_AUDIENCE_EXPERT]) != 0);
  for (int audience = 0; audience < 4; ++audience) {
    assay_string_free(told[audience]);
  }
  for (int wrong = -1; wrong <= 4; wrong += 5) {
    assay_explain_options options = {sizeof options, 1, 0, 0, NULL, wrong};
    char* json = NULL;
    char* error = NULL;
    EXPECT(assay_explain_json(explainer, kIsolated, &options, &json, &error) ==
           ASSAY_INVALID_ARGUMENT);
    EXPECT(json == NULL && error != NULL && strstr(error, "audience") != NULL);
    assay_string_free(error);
  }
}

static void* Explain(void* explainer) {
  char* json = NULL;
  return assay_explain_json(explainer, kRookDown, NULL, &json, NULL) == ASSAY_OK
             ? json
             : NULL;
}

static void TestThreads(assay_explainer* explainer) {
  pthread_t threads[4];
  char* expected = Explain(explainer);
  EXPECT(expected != NULL && strstr(expected, "\"proof\"") != NULL);
  for (int i = 0; i < 4; ++i) {
    EXPECT(pthread_create(&threads[i], NULL, Explain, explainer) == 0);
  }
  for (int i = 0; i < 4; ++i) {
    void* json = NULL;
    EXPECT(pthread_join(threads[i], &json) == 0);
    EXPECT(json != NULL && strcmp(json, expected) == 0);
    assay_string_free(json);
  }
  assay_string_free(expected);
}

/* The last test: all memory is taken, then given back little by little until an
 * explanation has enough, so that it runs out at many places. In a thread, which
 * has all of its stack from the start; that of main would have to grow. */
struct block {
  struct block* next;
};

static struct block* TakeAll(size_t size, struct block* taken) {
  struct block* block = NULL;
  while ((block = malloc(size)) != NULL) {
    block->next = taken;
    taken = block;
  }
  return taken;
}

static void* ExplainWithoutMemory(void* explainer) {
  const struct rlimit limit = {0, 0};
  EXPECT(setrlimit(RLIMIT_AS, &limit) == 0);
  struct block* taken = TakeAll(64, TakeAll(1024, TakeAll(65536, NULL)));
  int exhausted = 0;
  assay_code code = ASSAY_RESOURCE_EXHAUSTED;
  while (taken != NULL && code == ASSAY_RESOURCE_EXHAUSTED) {
    char* json = NULL;
    char* error = NULL;
    const assay_explain_options all = {sizeof all, 0, 1, 500, NULL, 0};
    code = assay_explain_json(explainer, kRookDown, &all, &json, &error);
    EXPECT(code == ASSAY_OK || code == ASSAY_RESOURCE_EXHAUSTED);
    EXPECT((json != NULL) == (code == ASSAY_OK));
    exhausted += code == ASSAY_RESOURCE_EXHAUSTED;
    assay_string_free(json);
    assay_string_free(error);
    struct block* block = taken;
    taken = block->next;
    free(block);
  }
  EXPECT(exhausted > 100);
  EXPECT(code == ASSAY_OK);
  return NULL;
}

static void TestNoMemory(assay_explainer* explainer) {
  pthread_t thread;
  EXPECT(pthread_create(&thread, NULL, ExplainWithoutMemory, explainer) == 0);
  EXPECT(pthread_join(thread, NULL) == 0);
}

int main(int argc, char** argv) {
  assay_explainer* explainer = NULL;
  char* error = NULL;
  EXPECT(assay_explainer_new(NULL, &explainer, &error) == ASSAY_OK);
  if (explainer == NULL) return 1;
  TestVersions();
  TestScore(explainer);
  TestErrors(explainer);
  TestWeights();
  TestOptions(explainer);
  TestAudiences(explainer);
  TestThreads(explainer);
  if (argc == 2 && strcmp(argv[1], "--no-memory") == 0) {
    TestNoMemory(explainer);
  }
  assay_explainer_free(explainer);
  return failures == 0 ? 0 : 1;
}
