// The C interface: each function reads its arguments, calls core, and turns
// what came of it into a code. All of them run inside Guarded, which lets no
// exception out: there is none of ours, but memory can end.
#include "assay/assay_c.h"

#include <algorithm>
#include <cstdlib>
#include <cstring>
#include <exception>
#include <new>
#include <string>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/explain/assayer.h"
#include "assay/explain/catalogue.h"
#include "assay/notation/fen.h"
#include "assay/terms/term.h"
#include "assay/terms/weights_text.h"
#include "service/convert/convert.h"
#include "service/convert/json.h"

struct assay_explainer {
  const assay::Assayer assayer;
};

namespace {

using assay::ProblemStatus;

// A copy that is freed with free(); nullptr where there is no memory.
char* Copy(const char* text, std::size_t size) {
  char* copy = static_cast<char*>(std::malloc(size + 1));
  if (copy == nullptr) return nullptr;
  std::memcpy(copy, text, size);
  copy[size] = '\0';
  return copy;
}

assay_code Fail(assay_code code, const char* message, char** error) {
  if (error != nullptr) *error = Copy(message, std::strlen(message));
  return code;
}

template <class Work>
assay_code Guarded(char** error, const Work& work) {
  try {
    const absl::Status status = work();
    if (status.ok()) return ASSAY_OK;
    const std::string message(status.message());
    return Fail(absl::IsResourceExhausted(status) ? ASSAY_RESOURCE_EXHAUSTED
                                                  : ASSAY_INVALID_ARGUMENT,
                message.c_str(), error);
  } catch (const std::bad_alloc&) {
    return Fail(ASSAY_RESOURCE_EXHAUSTED, "out of memory", error);
  } catch (const std::exception& thrown) {
    return Fail(ASSAY_INTERNAL, thrown.what(), error);
  } catch (...) {
    return Fail(ASSAY_INTERNAL, "an unknown exception", error);
  }
}

absl::Status Missing(const char* argument) {
  return ProblemStatus({argument, "missing", "NULL", "an address"});
}

absl::Status ReadAudience(int32_t given, assay::Audience& audience) {
  switch (given) {
    case 0:
    case ASSAY_AUDIENCE_CLUB:
      audience = assay::Audience::kClub;
      return absl::OkStatus();
    case ASSAY_AUDIENCE_NEWCOMER:
      audience = assay::Audience::kNewcomer;
      return absl::OkStatus();
    case ASSAY_AUDIENCE_EXPERT:
      audience = assay::Audience::kExpert;
      return absl::OkStatus();
    default:
      return ProblemStatus({"options.audience", "unknown number",
                            std::to_string(given),
                            "a number of assay_audience, or 0"});
  }
}

absl::StatusOr<assay::Position> ReadFen(const char* fen) {
  // No further than a byte over what is read at most.
  const std::size_t size = strnlen(fen, assay::kMostFenBytes + 1);
  return assay::PositionFromFen(std::string_view(fen, size));
}

// The fields that the caller knows of; the defaults for the others.
absl::Status ReadOptions(const assay_explain_options* given,
                         assay::ExplainOptions& options) {
  if (given == nullptr) return absl::OkStatus();
  if (given->size < sizeof(std::size_t)) {
    return ProblemStatus({"options.size", "too small",
                          std::to_string(given->size),
                          "sizeof(assay_explain_options)"});
  }
  assay_explain_options known = {};
  std::memcpy(&known, given, std::min(given->size, sizeof known));
  options.static_only = known.static_only != 0;
  options.all_claims = known.all_claims != 0;
  options.proof_nodes = known.proof_nodes;
  if (known.language != nullptr) options.language = known.language;
  if (assay::Catalogue::Of(options.language) == nullptr) {
    return ProblemStatus({"options.language", "no texts in it",
                          assay::Quoted(options.language), "en or de"});
  }
  return ReadAudience(known.audience, options.audience);
}

}  // namespace

const char* assay_version() { return assay::kVersion; }

int32_t assay_catalogue_version() { return assay::kCatalogueVersion; }

assay_code assay_explainer_new(const char* weights, assay_explainer** explainer,
                               char** error) {
  return Guarded(error, [&] {
    if (explainer == nullptr) return Missing("explainer");
    const absl::StatusOr<assay::Weights> read =
        weights == nullptr ? assay::Weights() : assay::ParseWeights(weights);
    if (!read.ok()) return read.status();
    *explainer = new assay_explainer{assay::Assayer(*read)};
    return absl::OkStatus();
  });
}

void assay_explainer_free(assay_explainer* explainer) { delete explainer; }

assay_code assay_score(const assay_explainer* explainer, const char* fen,
                       int32_t* score_cp, char** error) {
  return Guarded(error, [&] {
    if (explainer == nullptr) return Missing("explainer");
    if (fen == nullptr) return Missing("fen");
    if (score_cp == nullptr) return Missing("score_cp");
    const absl::StatusOr<assay::Position> position = ReadFen(fen);
    if (!position.ok()) return position.status();
    *score_cp = explainer->assayer.Score(*position);
    return absl::OkStatus();
  });
}

assay_code assay_explain_json(const assay_explainer* explainer, const char* fen,
                              const assay_explain_options* options, char** json,
                              char** error) {
  return Guarded(error, [&] {
    if (explainer == nullptr) return Missing("explainer");
    if (fen == nullptr) return Missing("fen");
    if (json == nullptr) return Missing("json");
    assay::ExplainOptions read;
    absl::Status sound = ReadOptions(options, read);
    if (!sound.ok()) return sound;
    const absl::StatusOr<assay::Position> position = ReadFen(fen);
    if (!position.ok()) return position.status();
    assay::v1::Explanation message;
    assay::service::ToProto(explainer->assayer.Explain(*position, read),
                            explainer->assayer, &message);
    const std::string text = assay::service::ToJson(message);
    char* copy = Copy(text.data(), text.size());
    if (copy == nullptr) throw std::bad_alloc();
    *json = copy;
    return absl::OkStatus();
  });
}

void assay_string_free(char* string) { std::free(string); }
