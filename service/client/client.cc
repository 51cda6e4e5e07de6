#include "service/client/client.h"

#include <fstream>
#include <optional>
#include <sstream>
#include <thread>
#include <utility>

#include "absl/strings/cord.h"
#include "google/rpc/error_details.pb.h"
#include "google/rpc/status.pb.h"
#include "grpcpp/create_channel.h"
#include "grpcpp/security/credentials.h"

namespace assay::service {
namespace {

using std::chrono::milliseconds;
using std::chrono::system_clock;

constexpr char kDetailsUrl[] = "type.googleapis.com/google.rpc.Status";
constexpr int kMostAnswerBytes = 16 << 20;

absl::StatusOr<std::string> ReadFile(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  if (!file) return absl::UnavailableError("cannot read " + path);
  return text.str();
}

absl::StatusOr<std::string> ReadToken(const std::string& path) {
  if (path.empty()) return std::string();
  absl::StatusOr<std::string> text = ReadFile(path);
  if (text.ok()) text = text->substr(0, text->find_first_of("\r\n"));
  return text;
}

absl::StatusOr<std::shared_ptr<grpc::ChannelCredentials>> CredentialsOf(
    const ClientOptions& options) {
  if (options.ca_file.empty()) return grpc::InsecureChannelCredentials();
  grpc::SslCredentialsOptions ssl;
  const std::pair<const std::string&, std::string&> files[] = {
      {options.ca_file, ssl.pem_root_certs},
      {options.cert_file, ssl.pem_cert_chain},
      {options.key_file, ssl.pem_private_key}};
  for (const auto& [path, content] : files) {
    if (path.empty()) continue;
    absl::StatusOr<std::string> read = ReadFile(path);
    if (!read.ok()) return read.status();
    content = *std::move(read);
  }
  return grpc::SslCredentials(ssl);
}

absl::Status ToAbsl(const grpc::Status& status) {
  if (status.ok()) return absl::OkStatus();
  absl::Status made(static_cast<absl::StatusCode>(status.error_code()),
                    status.error_message());
  if (!status.error_details().empty()) {
    made.SetPayload(kDetailsUrl, absl::Cord(status.error_details()));
  }
  return made;
}

template <class Detail>
std::optional<Detail> DetailOf(const std::string& bytes) {
  google::rpc::Status details;
  if (!details.ParseFromString(bytes)) return std::nullopt;
  for (const auto& any : details.details()) {
    Detail detail;
    if (any.UnpackTo(&detail)) return detail;
  }
  return std::nullopt;
}

// How long a server that is too busy asks us to wait.
std::optional<milliseconds> RetryAfter(const grpc::Status& status) {
  if (status.error_code() != grpc::StatusCode::RESOURCE_EXHAUSTED) {
    return std::nullopt;
  }
  const auto retry = DetailOf<google::rpc::RetryInfo>(status.error_details());
  if (!retry.has_value()) return std::nullopt;
  return milliseconds(retry->retry_delay().seconds() * 1000 +
                      retry->retry_delay().nanos() / 1000000);
}

}  // namespace

std::vector<Violation> ViolationsOf(const absl::Status& status) {
  std::vector<Violation> violations;
  const auto payload = status.GetPayload(kDetailsUrl);
  if (!payload.has_value()) return violations;
  const auto bad = DetailOf<google::rpc::BadRequest>(std::string(*payload));
  if (!bad.has_value()) return violations;
  for (const auto& violation : bad->field_violations()) {
    violations.push_back({violation.field(), violation.description()});
  }
  return violations;
}

std::string ServiceConfig() {
  return R"({
    "loadBalancingConfig": [{"round_robin": {}}],
    "healthCheckConfig": {"serviceName": "assay.v1.PositionExplainer"},
    "methodConfig": [{
      "name": [{"service": "assay.v1.PositionExplainer"}],
      "retryPolicy": {
        "maxAttempts": 4,
        "initialBackoff": "0.05s",
        "maxBackoff": "1s",
        "backoffMultiplier": 3,
        "retryableStatusCodes": ["UNAVAILABLE"]
      }
    }],
    "retryThrottling": {"maxTokens": 100, "tokenRatio": 0.1}
  })";
}

absl::StatusOr<std::unique_ptr<Client>> Client::Connect(
    const ClientOptions& options) {
  const auto credentials = CredentialsOf(options);
  if (!credentials.ok()) return credentials.status();
  absl::StatusOr<std::string> token = ReadToken(options.token_file);
  if (!token.ok()) return token.status();
  grpc::ChannelArguments arguments;
  arguments.SetServiceConfigJSON(ServiceConfig());
  arguments.SetMaxReceiveMessageSize(kMostAnswerBytes);
  if (!options.tls_name.empty()) {
    arguments.SetSslTargetNameOverride(options.tls_name);
  }
  return std::unique_ptr<Client>(
      new Client(options, *std::move(token),
                 v1::PositionExplainer::NewStub(grpc::CreateCustomChannel(
                     options.address, *credentials, arguments))));
}

Client::Client(const ClientOptions& options, std::string token,
               std::unique_ptr<Stub> stub)
    : options_(options), token_(std::move(token)), stub_(std::move(stub)) {}

void Client::Prepare(grpc::ClientContext& context,
                     system_clock::time_point deadline) const {
  context.set_deadline(deadline);
  if (!token_.empty()) context.AddMetadata("authorization", "Bearer " + token_);
}

template <class Request, class Response>
absl::StatusOr<Response> Client::Call(Method<Request, Response> method,
                                      const Request& request) {
  const auto deadline = system_clock::now() + options_.deadline;
  while (true) {
    grpc::ClientContext context;
    Prepare(context, deadline);
    Response response;
    const grpc::Status status =
        (stub_.get()->*method)(&context, request, &response);
    if (status.ok()) return response;
    const std::optional<milliseconds> wait = RetryAfter(status);
    if (!wait.has_value() || system_clock::now() + *wait >= deadline) {
      return ToAbsl(status);
    }
    std::this_thread::sleep_for(*wait);
  }
}

template <class Request, class Response>
absl::Status Client::Stream(StreamMethod<Request, Response> method,
                            const Request& request,
                            const std::function<bool(Response&)>& take) {
  const auto deadline = system_clock::now() + options_.deadline;
  while (true) {
    grpc::ClientContext context;
    Prepare(context, deadline);
    const auto stream = (stub_.get()->*method)(&context, request);
    Response answer;
    bool answered = false;
    bool content = false;
    while (!content && stream->Read(&answer)) {
      answered = true;
      content = !take(answer);
    }
    if (content) context.TryCancel();
    const grpc::Status status = stream->Finish();
    if (content || status.ok()) return absl::OkStatus();
    const std::optional<milliseconds> wait = RetryAfter(status);
    if (answered || !wait.has_value() ||
        system_clock::now() + *wait >= deadline) {
      return ToAbsl(status);
    }
    std::this_thread::sleep_for(*wait);
  }
}

absl::Status Client::ExplainLesson(
    const v1::ExplainLessonRequest& request,
    const std::function<bool(v1::ExplainLessonResponse&)>& take) {
  return Stream(&Stub::ExplainLesson, request, take);
}

absl::Status Client::ProofreadLesson(
    const v1::ProofreadLessonRequest& request,
    const std::function<bool(v1::ProofreadLessonResponse&)>& take) {
  return Stream(&Stub::ProofreadLesson, request, take);
}

absl::StatusOr<v1::ExplainResponse> Client::Explain(
    const v1::ExplainRequest& request) {
  return Call(&Stub::Explain, request);
}

absl::StatusOr<v1::ExplainBatchResponse> Client::ExplainBatch(
    const v1::ExplainBatchRequest& request) {
  return Call(&Stub::ExplainBatch, request);
}

absl::StatusOr<v1::ScoreResponse> Client::Score(
    const v1::ScoreRequest& request) {
  return Call(&Stub::Score, request);
}

absl::StatusOr<v1::ExplainMoveResponse> Client::ExplainMove(
    const v1::ExplainMoveRequest& request) {
  return Call(&Stub::ExplainMove, request);
}

absl::StatusOr<v1::CompareResponse> Client::Compare(
    const v1::CompareRequest& request) {
  return Call(&Stub::Compare, request);
}

absl::StatusOr<v1::WhatIfResponse> Client::WhatIf(
    const v1::WhatIfRequest& request) {
  return Call(&Stub::WhatIf, request);
}

absl::StatusOr<v1::ListTermsResponse> Client::ListTerms() {
  return Call(&Stub::ListTerms, v1::ListTermsRequest());
}

absl::Status Client::ExplainStream(const RequestSource& next,
                                   const AnswerSink& take) {
  grpc::ClientContext context;
  Prepare(context, system_clock::now() + options_.deadline);
  const auto stream = stub_->ExplainStream(&context);
  // The server reads no further while its answers are not taken: a client that
  // wrote all first would wait for ever.
  std::thread reader([&] {
    v1::ExplainStreamResponse answer;
    while (stream->Read(&answer)) take(answer);
  });
  v1::ExplainRequest request;
  while (next(request) && stream->Write(request)) request.Clear();
  stream->WritesDone();
  reader.join();
  return ToAbsl(stream->Finish());
}

}  // namespace assay::service
