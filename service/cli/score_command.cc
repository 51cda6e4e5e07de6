#include "service/cli/commands.h"
#include "service/convert/convert.h"

namespace assay::service {
namespace {

// The record with our score as its ce, from the side to move's view.
std::string EpdText(const EpdRecord& record, Centipawns score) {
  EpdRecord scored = record;
  const Side side = record.position.side_to_move();
  scored.Set({"ce", {EpdInteger(CeFromWhite(score, side))}});
  const absl::StatusOr<std::string> text = WriteEpd(scored);
  return text.ok() ? *text + '\n' : std::string("error\n");
}

std::string JsonText(const absl::StatusOr<NamedRecord>& named,
                     const Assayer& assayer) {
  v1::ScoreOutcome outcome;
  if (named.ok()) {
    outcome.set_score_cp(assayer.Score(named->record.position));
  } else {
    ToProto(named.status(), outcome.mutable_error());
  }
  return JsonLine(outcome);
}

}  // namespace

int RunScore(const Arguments& arguments, const Assayer& assayer,
             std::ostream& out) {
  const auto work = [&](const Item& item) -> ItemOutput {
    const absl::StatusOr<NamedRecord> named = ReadItem(item);
    if (arguments.format == Format::kJson) {
      return {JsonText(named, assayer), !named.ok()};
    }
    if (!named.ok()) return {"error\n", true};
    const Centipawns score = assayer.Score(named->record.position);
    if (arguments.format == Format::kEpd) {
      return {EpdText(named->record, score), false};
    }
    return {std::to_string(score) + '\n', false};
  };
  return RunOnInput(arguments, out, work);
}

}  // namespace assay::service
