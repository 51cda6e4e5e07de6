#include "service/cli/commands.h"
#include "service/cli/print.h"
#include "service/convert/convert.h"
#include "service/convert/wording.h"

namespace assay::service {

int RunExplain(const Arguments& arguments, const Assayer& assayer,
               std::ostream& out) {
  ExplainOptions options;
  options.all_claims = arguments.all_claims;
  options.static_only = arguments.static_only;
  options.proof_nodes = arguments.proof_nodes;
  options.language = arguments.language;
  options.audience = arguments.audience;
  const TextStyle style = StyleOf(arguments);
  const auto work = [&](const Item& item) -> ItemOutput {
    const absl::StatusOr<NamedRecord> named = ReadItem(item);
    if (!named.ok()) {
      return NotExplained(item, named.status(), arguments.format);
    }
    const Explanation explanation =
        assayer.Explain(named->record.position, options);
    if (arguments.format == Format::kText) {
      return ExplainedText(*named, explanation, style);
    }
    v1::Explanation message;
    ToProto(explanation, assayer, &message);
    if (arguments.wording) AddWordings(explanation, &message);
    return ExplainedJson(*named, &message);
  };
  return RunOnInput(arguments, out, OneByOne(work));
}

}  // namespace assay::service
