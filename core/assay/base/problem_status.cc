// The payload is the problems' fields, each ended by a unit separator (0x1F),
// which Quoted() and our own literals never contain.
#include "assay/base/problem_status.h"

#include <optional>
#include <string>
#include <utility>

#include "absl/strings/cord.h"

namespace assay {
namespace {

constexpr char kPayloadUrl[] = "assay/problems";
constexpr char kEnd = '\x1F';

}  // namespace

absl::Status ProblemsStatus(const std::vector<Problem>& problems) {
  if (problems.empty()) return absl::OkStatus();
  std::string message;
  std::string payload;
  for (const Problem& problem : problems) {
    if (!message.empty()) message += "; ";
    message += ToString(problem);
    for (const std::string* part :
         {&problem.field, &problem.reason, &problem.found, &problem.expected}) {
      payload += *part;
      payload += kEnd;
    }
  }
  absl::Status status = absl::InvalidArgumentError(message);
  status.SetPayload(kPayloadUrl, absl::Cord(payload));
  return status;
}

absl::Status ProblemStatus(Problem problem) {
  return ProblemsStatus({std::move(problem)});
}

std::vector<Problem> ProblemsOf(const absl::Status& status) {
  const auto payload = status.GetPayload(kPayloadUrl);
  if (!payload.has_value()) return {};
  const std::string text(*payload);
  std::vector<std::string> parts;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find(kEnd, at);
    parts.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  std::vector<Problem> problems;
  for (std::size_t i = 0; i + 3 < parts.size(); i += 4) {
    problems.push_back({parts[i], parts[i + 1], parts[i + 2], parts[i + 3]});
  }
  return problems;
}

}  // namespace assay
