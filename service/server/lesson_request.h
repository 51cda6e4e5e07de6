// What both calls that take a lesson ask of their request.
#ifndef ASSAY_SERVICE_SERVER_LESSON_REQUEST_H_
#define ASSAY_SERVICE_SERVER_LESSON_REQUEST_H_

#include <string>
#include <vector>

#include "absl/status/status.h"
#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "service/server/limits.h"
#include "service/server/read_request.h"
#include "service/server/wire.h"

namespace assay::service {

inline absl::Status NoGames() {
  return ProblemStatus({"pgn", "no game", "none", "at least one game"});
}

// INVALID_ARGUMENT for bytes that are no such message, no PGN, one that is too
// large, or a bad option.
template <class Request>
absl::Status ReadLessonRequest(const grpc::ByteBuffer& bytes,
                               const SearchBudget& budget, Request& request) {
  absl::Status read = ReadMessage(bytes, kMostLessonRequestBytes, request);
  if (!read.ok()) return read;
  std::vector<Problem> problems = OptionProblems(request.options(), budget);
  if (request.pgn().empty()) {
    problems.push_back({"pgn", "missing", "no text", "a PGN"});
  }
  if (request.pgn().size() > kMostLessonBytes) {
    problems.push_back({"pgn", "too large",
                        std::to_string(request.pgn().size()) + " bytes",
                        "at most " + std::to_string(kMostLessonBytes)});
  }
  return ProblemsStatus(problems);
}

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_LESSON_REQUEST_H_
