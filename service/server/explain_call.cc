#include "service/server/explain_call.h"

#include "service/server/limits.h"
#include "service/server/wire.h"

namespace assay::service {
namespace {

// Longer requests hold moves to play, which takes time.
constexpr std::size_t kShortBytes = 1024;

// What the request may search; one that is long, or cannot be read, is taken to
// ask for the default.
std::uint64_t NodesOf(const grpc::ByteBuffer& bytes,
                      const SearchBudget& budget) {
  auto& request = ReusedMessage<v1::ExplainRequest>();
  const bool is_short = bytes.Length() <= kShortBytes &&
                        ReadMessage(bytes, kShortBytes, request).ok();
  if (!is_short) return budget.proof_nodes;
  const std::uint64_t nodes = NodesOf(request.options(), budget);
  return nodes > budget.most_proof_nodes ? 0 : nodes;
}

absl::Status AnswerTo(const grpc::ByteBuffer& bytes, Call& call,
                      grpc::Slice& slice) {
  auto& request = ReusedMessage<v1::ExplainRequest>();
  absl::Status read = ReadMessage(bytes, kMostRequestBytes, request);
  if (!read.ok()) return read;
  auto& answer = ReusedMessage<v1::ExplainResponse>();
  absl::Status status = ExplainItem(call.explain_context(), request,
                                    answer.mutable_explanation());
  call.CountItem(status, NodesIn(answer.explanation()));
  if (!status.ok()) return status;
  answer.set_tag(request.tag());
  slice = WriteMessage(answer);
  return absl::OkStatus();
}

}  // namespace

grpc::ServerUnaryReactor* ExplainAtOnce(Backend& backend,
                                        const UnaryArguments& arguments) {
  const grpc::ByteBuffer& bytes = *arguments.request;
  if (bytes.Length() > kShortBytes ||
      NodesOf(bytes, backend.settings.budget) > 0) {
    return nullptr;
  }
  Call call(backend, Method::kExplain, arguments.context);
  grpc::Slice slice;
  absl::Status status = call.MayBegin();
  if (status.ok()) status = AnswerTo(bytes, call, slice);
  if (status.ok()) *arguments.response = grpc::ByteBuffer(&slice, 1);
  const grpc::Status finished = call.ToFinish(status);
  call.End();
  grpc::ServerUnaryReactor* reactor = arguments.context->DefaultReactor();
  reactor->Finish(finished);
  return reactor;
}

std::uint64_t ExplainCall::Units() const {
  return WorkerPool::kItemUnits +
         NodesOf(request(), call().backend().settings.budget);
}

absl::Status ExplainCall::Work(grpc::Slice& slice) {
  return AnswerTo(request(), call(), slice);
}

}  // namespace assay::service
