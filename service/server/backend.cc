#include "service/server/backend.h"

#include "service/convert/convert.h"
#include "service/server/wire.h"

namespace assay::service {
namespace {

grpc::Slice TermsOf(const Assayer& assayer) {
  v1::ListTermsResponse terms;
  ToProto(assayer, &terms);
  return WriteMessage(terms);
}

}  // namespace

Backend::Backend(const Weights& weights, const BackendSettings& given)
    : settings(given),
      assayer(weights),
      terms(TermsOf(assayer)),
      pool(settings.workers, settings.most_wait),
      metrics(pool) {}

}  // namespace assay::service
