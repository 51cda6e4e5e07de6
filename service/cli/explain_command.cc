#include "assay/explain/text.h"
#include "service/cli/commands.h"
#include "service/convert/convert.h"

namespace assay::service {
namespace {

std::string ErrorText(const Item& item, const absl::Status& status,
                      Format format) {
  if (format == Format::kText) {
    return "error: " + std::string(status.message()) + "\n\n";
  }
  // An ExplainStreamResponse's outcome without its index.
  v1::ExplainStreamResponse response;
  response.set_tag(item.label);
  ToProto(status, response.mutable_error());
  return JsonLine(response);
}

}  // namespace

int RunExplain(const Arguments& arguments, const Assayer& assayer,
               std::ostream& out) {
  ExplainOptions options;
  options.all_claims = arguments.all_claims;
  options.static_only = arguments.static_only;
  options.proof_nodes = arguments.proof_nodes;
  TextStyle style;
  style.colour = UseColour();
  style.ledger = arguments.ledger;
  const auto work = [&](const Item& item) -> ItemOutput {
    const absl::StatusOr<NamedRecord> named = ReadItem(item);
    if (!named.ok()) {
      return {ErrorText(item, named.status(), arguments.format), true};
    }
    const Explanation explanation =
        assayer.Explain(named->record.position, options);
    if (arguments.format == Format::kText) {
      const std::string title = named->label.empty() ? "" : named->label + '\n';
      return {title + ToText(explanation, style) + '\n', false};
    }
    v1::ExplainResponse response;
    response.set_tag(named->label);
    ToProto(explanation, assayer, response.mutable_explanation());
    return {JsonLine(response), false};
  };
  return RunOnInput(arguments, out, work);
}

}  // namespace assay::service
