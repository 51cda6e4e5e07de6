#include "assay/notation/fen.h"
#include "service/cli/commands.h"
#include "service/convert/convert.h"

namespace assay::service {

int RunScore(const Arguments& arguments, const Assayer& assayer,
             std::ostream& out) {
  const auto work = [&](const std::string& line) -> ItemOutput {
    const absl::StatusOr<Position> position = PositionFromFen(line);
    const bool ok = position.ok();
    if (arguments.format == Format::kText) {
      return {ok ? std::to_string(assayer.Score(*position)) + '\n' : "error\n",
              !ok};
    }
    v1::ScoreOutcome outcome;
    if (ok) {
      outcome.set_score_cp(assayer.Score(*position));
    } else {
      ToProto(position.status(), outcome.mutable_error());
    }
    return {JsonLine(outcome), !ok};
  };
  const auto check = [](const std::string& text) {
    return PositionFromFen(text).status();
  };
  return RunOnInput(arguments, out, work, check);
}

}  // namespace assay::service
