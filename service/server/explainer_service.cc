#include "service/server/explainer_service.h"

#include <memory>
#include <string>

#include "service/server/batch_call.h"
#include "service/server/compare_call.h"
#include "service/server/explain_call.h"
#include "service/server/explain_lesson_call.h"
#include "service/server/move_call.h"
#include "service/server/proofread_lesson_call.h"
#include "service/server/score_call.h"
#include "service/server/what_if_call.h"

namespace assay::service {
namespace {

// The catalogue does not change while the server runs.
class TermsCall : public UnaryCall {
 public:
  using UnaryCall::UnaryCall;

 private:
  void Begin() override { Answer({call().backend().terms}); }
};

}  // namespace

grpc::ServerUnaryReactor* ExplainerService::Explain(Context* context,
                                                    const Bytes* request,
                                                    Bytes* response) {
  const UnaryArguments arguments{context, request, response};
  grpc::ServerUnaryReactor* done = ExplainAtOnce(backend_, arguments);
  if (done != nullptr) return done;
  return UnaryCall::Start<ExplainCall>(backend_, Method::kExplain, arguments);
}

RawBidiReactor* ExplainerService::ExplainStream(Context* context) {
  return StreamCall::Start(backend_, streams_, context);
}

grpc::ServerUnaryReactor* ExplainerService::ExplainBatch(Context* context,
                                                         const Bytes* request,
                                                         Bytes* response) {
  return UnaryCall::Start<BatchCall>(backend_, Method::kExplainBatch,
                                     {context, request, response});
}

grpc::ServerUnaryReactor* ExplainerService::Score(Context* context,
                                                  const Bytes* request,
                                                  Bytes* response) {
  return UnaryCall::Start<ScoreCall>(backend_, Method::kScore,
                                     {context, request, response});
}

grpc::ServerUnaryReactor* ExplainerService::ListTerms(Context* context,
                                                      const Bytes* request,
                                                      Bytes* response) {
  return UnaryCall::Start<TermsCall>(backend_, Method::kListTerms,
                                     {context, request, response});
}

grpc::ServerUnaryReactor* ExplainerService::ExplainMove(Context* context,
                                                        const Bytes* request,
                                                        Bytes* response) {
  return UnaryCall::Start<MoveCall>(backend_, Method::kExplainMove,
                                    {context, request, response});
}

grpc::ServerUnaryReactor* ExplainerService::Compare(Context* context,
                                                    const Bytes* request,
                                                    Bytes* response) {
  return UnaryCall::Start<CompareCall>(backend_, Method::kCompare,
                                       {context, request, response});
}

grpc::ServerUnaryReactor* ExplainerService::WhatIf(Context* context,
                                                   const Bytes* request,
                                                   Bytes* response) {
  return UnaryCall::Start<WhatIfCall>(backend_, Method::kWhatIf,
                                      {context, request, response});
}

grpc::ServerWriteReactor<grpc::ByteBuffer>* ExplainerService::ExplainLesson(
    Context* context, const Bytes* request) {
  return LessonCall::Start<ExplainLessonCall>(backend_, Method::kExplainLesson,
                                              context, *request);
}

grpc::ServerWriteReactor<grpc::ByteBuffer>* ExplainerService::ProofreadLesson(
    Context* context, const Bytes* request) {
  return LessonCall::Start<ProofreadLessonCall>(
      backend_, Method::kProofreadLesson, context, *request);
}

}  // namespace assay::service
