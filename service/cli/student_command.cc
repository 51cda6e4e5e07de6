// A game is one task; what stands out is told when all were looked at.
#include <iostream>
#include <memory>

#include "assay/lesson/student.h"
#include "service/cli/commands.h"
#include "service/cli/in_order.h"
#include "service/cli/input.h"
#include "service/cli/output_file.h"
#include "service/cli/print.h"
#include "service/convert/lesson_convert.h"

namespace assay::service {
namespace {

struct Task {
  std::uint32_t game = 0;
  std::shared_ptr<const PgnItem> item;
};

int Failure(const absl::Status& status) {
  std::cerr << "assay: " << status.message() << '\n';
  return absl::IsUnavailable(status) ? kCannotReadOrWrite : kBadUsage;
}

}  // namespace

int RunStudent(const Arguments& arguments, const Assayer& assayer,
               std::ostream& out) {
  const absl::StatusOr<std::string> text = ReadGames(arguments);
  if (!text.ok()) return Failure(text.status());
  const Catalogue& words =
      Catalogue::OrEnglish(arguments.language, Audience::kClub);
  PgnReader reader(*text);
  StudentStudy study;
  std::uint32_t games = 0;
  bool failed = false;
  InOrder<Task, GameStudy> run(
      [&](Task& task) {
        std::optional<PgnItem> item = reader.Next();
        if (!item.has_value()) return false;
        if (!item->ok()) {
          failed = true;
          std::cerr << "assay: " << item->status().message() << '\n';
        }
        task.game = games++;
        task.item = std::make_shared<const PgnItem>(*std::move(item));
        return true;
      },
      [&](const Task& task) {
        return StudyGame(task.game, *task.item, arguments.name, assayer, words);
      },
      [&](GameStudy& game) {
        study.Add(game);
        return true;
      });
  run.Run(JobsOf(arguments));
  const StudentReport report = study.Report(words);
  if (report.games == 0) {
    return Failure(absl::InvalidArgumentError(
        "--name: not a player of any game: found " + arguments.name +
        ", expected the text of a White or Black tag, or of its part before "
        "the comma"));
  }
  if (!arguments.handout_file.empty()) {
    OutputFile file(arguments.handout_file);
    file.out() << StudentHandout(report, arguments.name, words,
                                 arguments.paper);
    const absl::Status written = file.Commit();
    if (!written.ok()) return Failure(written);
  } else if (arguments.format == Format::kJson) {
    v1::StudentReport message;
    message.set_name(arguments.name);
    ToProto(report, assayer, &message);
    out << JsonLine(message);
  } else {
    out << ToText(report, arguments.name, words);
  }
  out.flush();
  if (!out.good())
    return Failure(absl::UnavailableError("output: cannot write"));
  return failed ? kItemsFailed : kSuccess;
}

}  // namespace assay::service
