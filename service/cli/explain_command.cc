#include "assay/explain/text.h"
#include "assay/notation/fen.h"
#include "service/cli/commands.h"
#include "service/convert/convert.h"

namespace assay::service {
namespace {

std::string ErrorText(const absl::Status& status, Format format) {
  if (format == Format::kText) {
    return "error: " + std::string(status.message()) + "\n\n";
  }
  // An ExplainStreamResponse's outcome without index and tag.
  v1::ExplainStreamResponse response;
  ToProto(status, response.mutable_error());
  return JsonLine(response);
}

}  // namespace

int RunExplain(const Arguments& arguments, const Assayer& assayer,
               std::ostream& out) {
  ExplainOptions options;
  options.all_claims = arguments.all_claims;
  TextStyle style;
  style.colour = UseColour();
  style.ledger = arguments.ledger;
  const auto work = [&](const std::string& line) -> ItemOutput {
    const absl::StatusOr<Position> position = PositionFromFen(line);
    if (!position.ok()) {
      return {ErrorText(position.status(), arguments.format), true};
    }
    const Explanation explanation = assayer.Explain(*position, options);
    if (arguments.format == Format::kText) {
      return {ToText(explanation, style) + '\n', false};
    }
    v1::ExplainResponse response;
    ToProto(explanation, assayer, response.mutable_explanation());
    return {JsonLine(response), false};
  };
  const auto check = [](const std::string& text) {
    return PositionFromFen(text).status();
  };
  return RunOnInput(arguments, out, work, check);
}

}  // namespace assay::service
