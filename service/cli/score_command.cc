#include "service/cli/commands.h"
#include "service/cli/print.h"

namespace assay::service {

int RunScore(const Arguments& arguments, const Assayer& assayer,
             std::ostream& out) {
  const auto work = [&](const Item& item) -> ItemOutput {
    const absl::StatusOr<NamedRecord> named = ReadItem(item);
    if (!named.ok()) return NotScored(named.status(), arguments.format);
    return Scored(*named, assayer.Score(named->record.position),
                  arguments.format);
  };
  return RunOnInput(arguments, out, OneByOne(work));
}

}  // namespace assay::service
