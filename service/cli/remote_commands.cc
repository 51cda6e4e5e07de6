#include "service/cli/remote_commands.h"

#include <utility>
#include <vector>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/notation/fen.h"
#include "service/cli/commands.h"
#include "service/cli/print.h"
#include "service/cli/remote_lesson.h"
#include "service/client/client.h"
#include "service/convert/from_proto.h"

namespace assay::service {
namespace {

// One call with its repetitions; whoever cannot wait interrupts the program. A
// lesson is one call, however long it is.
constexpr std::chrono::minutes kDeadline{10};
constexpr std::chrono::hours kLessonDeadline{48};

bool IsLesson(const Arguments& arguments) {
  return arguments.command == "lesson" || arguments.command == "proofread";
}

using Records = std::vector<absl::StatusOr<NamedRecord>>;

Records ReadShare(const Item* items, std::size_t count) {
  Records records;
  for (std::size_t i = 0; i < count; ++i) records.push_back(ReadItem(items[i]));
  return records;
}

// Of an answer that is an error, or does not fit the question.
absl::Status FaultOf(const v1::ItemError& error) {
  if (error.code() == 0) return absl::InternalError("no answer");
  return {static_cast<absl::StatusCode>(error.code()), error.message()};
}

ItemOutput Explained(const NamedRecord& named,
                     v1::ExplainStreamResponse& answer, const Item& item,
                     const Arguments& arguments) {
  if (!answer.has_explanation()) {
    return NotExplained(item, FaultOf(answer.error()), arguments.format);
  }
  if (arguments.format == Format::kJson) {
    return ExplainedJson(named, answer.mutable_explanation());
  }
  const absl::StatusOr<Explanation> explanation =
      FromProto(answer.explanation());
  if (!explanation.ok()) {
    return NotExplained(item, explanation.status(), arguments.format);
  }
  return ExplainedText(named, *explanation, StyleOf(arguments));
}

absl::Status ExplainShare(const Arguments& arguments, Client& client,
                          const Item* items, std::size_t count,
                          ItemOutput* outputs) {
  const Records records = ReadShare(items, count);
  v1::ExplainBatchRequest batch;
  for (const auto& record : records) {
    if (!record.ok()) continue;
    v1::ExplainRequest* request = batch.add_requests();
    request->mutable_position()->set_fen(ToFen(record->record.position));
    *request->mutable_options() = RemoteOptions(arguments);
  }
  absl::StatusOr<v1::ExplainBatchResponse> answers = client.ExplainBatch(batch);
  if (!answers.ok()) return answers.status();
  if (answers->responses_size() != batch.requests_size()) {
    return absl::InternalError("too few answers");
  }
  int next = 0;
  for (std::size_t i = 0; i < count; ++i) {
    outputs[i] =
        records[i].ok()
            ? Explained(*records[i], *answers->mutable_responses(next++),
                        items[i], arguments)
            : NotExplained(items[i], records[i].status(), arguments.format);
  }
  return absl::OkStatus();
}

absl::Status ScoreShare(Format format, Client& client, const Item* items,
                        std::size_t count, ItemOutput* outputs) {
  const Records records = ReadShare(items, count);
  v1::ScoreRequest request;
  for (const auto& record : records) {
    if (record.ok()) request.add_fens(ToFen(record->record.position));
  }
  const absl::StatusOr<v1::ScoreResponse> answers = client.Score(request);
  if (!answers.ok()) return answers.status();
  if (answers->outcomes_size() != request.fens_size()) {
    return absl::InternalError("too few answers");
  }
  int next = 0;
  for (std::size_t i = 0; i < count; ++i) {
    if (!records[i].ok()) {
      outputs[i] = NotScored(records[i].status(), format);
      continue;
    }
    const v1::ScoreOutcome& outcome = answers->outcomes(next++);
    outputs[i] = outcome.has_error()
                     ? NotScored(FaultOf(outcome.error()), format)
                     : Scored(*records[i], outcome.score_cp(), format);
  }
  return absl::OkStatus();
}

absl::Status PrintRemoteTerms(const Arguments& arguments, Client& client,
                              std::ostream& out) {
  const absl::StatusOr<v1::ListTermsResponse> terms = client.ListTerms();
  if (terms.ok()) PrintTerms(*terms, arguments.format, out);
  return terms.status();
}

ClientOptions ClientOptionsOf(const Arguments& arguments) {
  ClientOptions options;
  options.address = arguments.server;
  options.ca_file = arguments.server_ca;
  options.cert_file = arguments.server_cert;
  options.key_file = arguments.server_key;
  options.token_file = arguments.server_token;
  options.deadline = kDeadline;
  if (IsLesson(arguments)) options.deadline = kLessonDeadline;
  return options;
}

v1::Audience ToProto(Audience audience) {
  switch (audience) {
    case Audience::kNewcomer:
      return v1::AUDIENCE_NEWCOMER;
    case Audience::kExpert:
      return v1::AUDIENCE_EXPERT;
    case Audience::kClub:
      break;
  }
  return v1::AUDIENCE_CLUB;
}

}  // namespace

v1::ExplainOptions RemoteOptions(const Arguments& arguments) {
  v1::ExplainOptions options;
  options.set_static_only(arguments.static_only);
  options.set_proof_nodes(static_cast<unsigned>(arguments.proof_nodes));
  options.set_omit_claims(arguments.format == Format::kText);
  options.set_language(arguments.language);
  options.set_audience(ToProto(arguments.audience));
  options.set_with_wording(arguments.wording);
  return options;
}

absl::Status TooLargeForServers(std::size_t bytes) {
  return ProblemStatus({"file", "too large for a server",
                        std::to_string(bytes) + " bytes",
                        "at most " + std::to_string(kMostRemoteGamesBytes)});
}

int RunRemotely(const Arguments& arguments, std::ostream& out) {
  const absl::StatusOr<std::unique_ptr<Client>> client =
      Client::Connect(ClientOptionsOf(arguments));
  if (!client.ok()) return ServerFault(client.status());
  if (arguments.command == "terms") {
    const absl::Status printed = PrintRemoteTerms(arguments, **client, out);
    return printed.ok() ? kSuccess : ServerFault(printed);
  }
  if (IsQuestion(arguments.command)) {
    return RunQuestion(arguments, nullptr, client->get(), out);
  }
  if (arguments.command == "proofread") {
    return RunProofread(arguments, nullptr, client->get(), out);
  }
  if (arguments.command == "lesson") {
    return RunLesson(arguments, Assayer(), client->get(), out);
  }
  const bool explain = arguments.command == "explain";
  return RunOnInput(arguments, out,
                    [&](const Item* items, std::size_t count,
                        ItemOutput* outputs) -> absl::Status {
                      return explain ? ExplainShare(arguments, **client, items,
                                                    count, outputs)
                                     : ScoreShare(arguments.format, **client,
                                                  items, count, outputs);
                    });
}

}  // namespace assay::service
