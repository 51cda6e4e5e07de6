// A client of the service: calls with a deadline, tried again where that helps.
//
//   ClientOptions options;
//   options.address = "127.0.0.1:50051";
//   const auto client = Client::Connect(options);
//   v1::ExplainRequest request;
//   request.mutable_position()->set_fen(fen);
//   absl::StatusOr<v1::ExplainResponse> answer = (*client)->Explain(request);
//
// Calls go round the servers that the address names and that say they serve
// (policy round_robin, gRPC's health protocol). A server that is not there is
// tried again or left out; one that is too busy is asked again after the time
// that it gave; all within the deadline. A Client may be used by any number of
// threads.
#ifndef ASSAY_SERVICE_CLIENT_CLIENT_H_
#define ASSAY_SERVICE_CLIENT_CLIENT_H_

#include <chrono>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "assay/v1/explainer.grpc.pb.h"
#include "assay/v1/explainer.pb.h"

namespace assay::service {

struct ClientOptions {
  // A gRPC target: "host:port", "unix:PATH", "ipv4:1.2.3.4:1,1.2.3.5:1", ...
  std::string address;
  // For each call with its repetitions; for a stream as a whole.
  std::chrono::milliseconds deadline{30000};
  // PEM files. With a certificate authority: TLS; with the other two: mutual.
  std::string ca_file;
  std::string cert_file;
  std::string key_file;
  // Overrides the name that the server's certificate has to be for.
  std::string tls_name;
  // Its first line is the bearer token.
  std::string token_file;
};

// A fault of a request, as the server's BadRequest says it.
struct Violation {
  std::string field;
  std::string description;
};

// The faults that a failed call came with.
std::vector<Violation> ViolationsOf(const absl::Status& status);

// How the channel behaves: gRPC's service config, in JSON.
std::string ServiceConfig();

class Client {
 public:
  // Gives the next request, or false at the end.
  using RequestSource = std::function<bool(v1::ExplainRequest&)>;
  using AnswerSink = std::function<void(const v1::ExplainStreamResponse&)>;

  // UNAVAILABLE for a file that cannot be read. Does not wait for a server.
  static absl::StatusOr<std::unique_ptr<Client>> Connect(
      const ClientOptions& options);

  absl::StatusOr<v1::ExplainResponse> Explain(
      const v1::ExplainRequest& request);
  absl::StatusOr<v1::ExplainBatchResponse> ExplainBatch(
      const v1::ExplainBatchRequest& request);
  absl::StatusOr<v1::ScoreResponse> Score(const v1::ScoreRequest& request);
  absl::StatusOr<v1::ExplainMoveResponse> ExplainMove(
      const v1::ExplainMoveRequest& request);
  absl::StatusOr<v1::CompareResponse> Compare(
      const v1::CompareRequest& request);
  absl::StatusOr<v1::WhatIfResponse> WhatIf(const v1::WhatIfRequest& request);
  absl::StatusOr<v1::ListTermsResponse> ListTerms();

  // Answers as they come, in order, until `take` is content and says false.
  // Tried again only as long as there was no answer.
  absl::Status ExplainLesson(
      const v1::ExplainLessonRequest& request,
      const std::function<bool(v1::ExplainLessonResponse&)>& take);
  absl::Status ProofreadLesson(
      const v1::ProofreadLessonRequest& request,
      const std::function<bool(v1::ProofreadLessonResponse&)>& take);

  // Writes requests on this thread and takes answers on another, in order. Is
  // not tried again: on UNAVAILABLE, go on after the last answer taken.
  absl::Status ExplainStream(const RequestSource& next, const AnswerSink& take);

 private:
  using Stub = v1::PositionExplainer::Stub;
  template <class Request, class Response>
  using Method = grpc::Status (Stub::*)(grpc::ClientContext*, const Request&,
                                        Response*);

  Client(const ClientOptions& options, std::string token,
         std::unique_ptr<Stub> stub);
  void Prepare(grpc::ClientContext& context,
               std::chrono::system_clock::time_point deadline) const;
  template <class Request, class Response>
  using StreamMethod = std::unique_ptr<grpc::ClientReader<Response>> (Stub::*)(
      grpc::ClientContext*, const Request&);

  template <class Request, class Response>
  absl::Status Stream(StreamMethod<Request, Response> method,
                      const Request& request,
                      const std::function<bool(Response&)>& take);
  template <class Request, class Response>
  absl::StatusOr<Response> Call(Method<Request, Response> method,
                                const Request& request);

  const ClientOptions options_;
  const std::string token_;
  const std::unique_ptr<Stub> stub_;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLIENT_CLIENT_H_
