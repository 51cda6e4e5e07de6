// omit_claims: the claims are dropped before they are put into messages, which
// is most of their cost; the lists of indices are found by their type, so that
// no part of a later contract can keep one.
#include "service/server/explain_item.h"

#include <algorithm>
#include <string>

#include "service/convert/convert.h"
#include "service/convert/wording.h"

namespace assay::service {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;

bool HoldsClaimIndices(const FieldDescriptor& field) {
  constexpr const char* kNames[] = {"claims", "claims_before", "summary_claims",
                                    "summary_claims_before"};
  return field.is_repeated() &&
         field.cpp_type() == FieldDescriptor::CPPTYPE_UINT32 &&
         std::find(std::begin(kNames), std::end(kNames), field.name()) !=
             std::end(kNames);
}

}  // namespace

void DropClaimIndices(Message* message) {
  const Reflection& reflection = *message->GetReflection();
  const auto& type = *message->GetDescriptor();
  for (int i = 0; i < type.field_count(); ++i) {
    const FieldDescriptor* field = type.field(i);
    if (HoldsClaimIndices(*field)) {
      reflection.ClearField(message, field);
    } else if (field->cpp_type() != FieldDescriptor::CPPTYPE_MESSAGE) {
      continue;
    } else if (field->is_repeated()) {
      for (int n = reflection.FieldSize(*message, field); n > 0; --n) {
        DropClaimIndices(
            reflection.MutableRepeatedMessage(message, field, n - 1));
      }
    } else if (reflection.HasField(*message, field)) {
      DropClaimIndices(reflection.MutableMessage(message, field));
    }
  }
}

std::uint64_t NodesIn(const v1::Explanation& explanation) {
  std::uint64_t nodes = explanation.proof().nodes();
  for (const v1::Temptation& temptation : explanation.temptations()) {
    nodes += temptation.proof().nodes();
  }
  return nodes;
}

absl::Status ExplainItem(const ExplainContext& context,
                         const v1::ExplainRequest& request,
                         v1::Explanation* answer) {
  const absl::StatusOr<Position> position =
      ReadExplainRequest(request, context.budget, context.cancelled);
  if (!position.ok()) return position.status();
  Explanation explanation = context.assayer.Explain(
      *position, ToCore(request.options(), context.budget, &context.cancelled));
  if (context.cancelled) return absl::CancelledError("cancelled");
  const bool with_claims = !request.options().omit_claims();
  if (!with_claims) explanation.claims.clear();
  ToProto(explanation, context.assayer, answer);
  if (!with_claims) DropClaimIndices(answer);
  if (request.options().with_wording()) AddWordings(explanation, answer);
  return absl::OkStatus();
}

}  // namespace assay::service
