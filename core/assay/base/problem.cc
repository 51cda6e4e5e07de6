// The payload is the problems' fields, each ended by a unit separator (0x1F),
// which Quoted() and our own literals never contain.
#include "assay/base/problem.h"

#include <optional>
#include <utility>

#include "absl/strings/cord.h"

namespace assay {
namespace {

constexpr char kPayloadUrl[] = "assay/problems";
constexpr char kEnd = '\x1F';
constexpr std::size_t kLongestQuote = 40;

}  // namespace

std::string ToString(const Problem& problem) {
  std::string text = problem.field + ": " + problem.reason;
  if (!problem.found.empty()) text += ": found " + problem.found;
  if (!problem.expected.empty()) text += ", expected " + problem.expected;
  return text;
}

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

std::string Quoted(std::string_view text) {
  constexpr char kHex[] = "0123456789abcdef";
  std::string quoted = "\"";
  for (const char c : text.substr(0, kLongestQuote)) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 0x20 && byte < 0x7F) {
      quoted += c;
    } else {
      quoted += {'\\', 'x', kHex[byte >> 4U], kHex[byte & 15U]};
    }
  }
  quoted += '"';
  if (text.size() > kLongestQuote) {
    quoted += "... (" + std::to_string(text.size()) + " bytes)";
  }
  return quoted;
}

}  // namespace assay
