// Trailing metadata has to stay below 8 KiB, details and all: texts are cut.
#include "service/server/status.h"

#include <algorithm>
#include <string>
#include <vector>

#include "absl/strings/cord.h"
#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "google/rpc/error_details.pb.h"
#include "google/rpc/status.pb.h"
#include "service/convert/convert.h"

namespace assay::service {
namespace {

constexpr char kRetryUrl[] = "assay/retry_after_ms";
constexpr std::size_t kMostViolations = 10;
constexpr std::size_t kMostTextBytes = 240;      // of one violation
constexpr std::size_t kMostMessageBytes = 1024;  // of the status

std::string Cut(std::string text, std::size_t most) {
  if (text.size() > most) text.replace(most - 3, std::string::npos, "...");
  return text;
}

void AddViolations(const absl::Status& status, google::rpc::Status& details) {
  google::rpc::BadRequest bad;
  for (Problem problem : ProblemsOf(status)) {
    if (bad.field_violations_size() == int{kMostViolations}) break;
    auto* violation = bad.add_field_violations();
    const std::size_t colon = problem.field.find(':');
    violation->set_field(problem.field.substr(0, colon));
    std::string text;
    if (colon != std::string::npos) {
      problem.field.erase(0, colon + 1);
      text = ToString(problem);
    } else {
      text = ToString(problem).substr(problem.field.size() + 2);
    }
    violation->set_description(Cut(std::move(text), kMostTextBytes));
  }
  if (bad.field_violations_size() > 0) details.add_details()->PackFrom(bad);
}

void AddRetry(const absl::Status& status, google::rpc::Status& details) {
  const auto payload = status.GetPayload(kRetryUrl);
  if (!payload.has_value()) return;
  const long milliseconds = std::stol(std::string(*payload));
  google::rpc::RetryInfo retry;
  retry.mutable_retry_delay()->set_seconds(milliseconds / 1000);
  retry.mutable_retry_delay()->set_nanos(static_cast<int>(milliseconds % 1000) *
                                         1000000);
  details.add_details()->PackFrom(retry);
}

}  // namespace

absl::Status Overloaded(const std::string& message,
                        std::chrono::milliseconds retry_after) {
  absl::Status status = absl::ResourceExhaustedError(message);
  status.SetPayload(kRetryUrl, absl::Cord(std::to_string(retry_after.count())));
  return status;
}

grpc::Status ToGrpc(const absl::Status& status) {
  if (status.ok()) return grpc::Status::OK;
  google::rpc::Status details;
  details.set_code(static_cast<int>(status.code()));
  details.set_message(Cut(std::string(status.message()), kMostMessageBytes));
  AddViolations(status, details);
  AddRetry(status, details);
  return {
      static_cast<grpc::StatusCode>(status.code()), details.message(),
      details.details_size() > 0 ? details.SerializeAsString() : std::string()};
}

void ToItemError(const absl::Status& status, v1::ItemError* message) {
  ToProto(status, message);
  message->set_message(Cut(message->message(), kMostMessageBytes));
  for (v1::FieldProblem& problem : *message->mutable_problems()) {
    const std::size_t colon = problem.field().find(':');
    if (colon != std::string::npos) {
      problem.mutable_field()->erase(0, colon + 1);
    }
  }
}

}  // namespace assay::service
