// Checks of all games through a few threads; what needs the whole lesson, in
// order afterwards.
#include <algorithm>
#include <iostream>
#include <memory>

#include "assay/lesson/proofread.h"
#include "service/cli/commands.h"
#include "service/cli/in_order.h"
#include "service/cli/input.h"
#include "service/cli/print.h"
#include "service/cli/progress.h"
#include "service/cli/remote_commands.h"
#include "service/cli/remote_lesson.h"
#include "service/convert/lesson_convert.h"

namespace assay::service {
namespace {

struct GameTasks {
  std::uint32_t game = 0;
  PgnItem item;
  std::vector<ProofreadTask> tasks;
};

struct Task {
  std::shared_ptr<const GameTasks> game;
  std::size_t task = 0;
};

class Tasks {
 public:
  explicit Tasks(std::string_view text) : reader_(text) {}

  bool Next(Task& task) {
    while (game_ == nullptr || task_ == game_->tasks.size()) {
      std::optional<PgnItem> item = reader_.Next();
      if (!item.has_value()) return false;
      auto game = std::make_shared<GameTasks>();
      game->game = next_game_++;
      game->item = *std::move(item);
      game->tasks = ProofreadTasks(game->item);
      game_ = std::move(game);
      task_ = 0;
    }
    task = {game_, task_++};
    return true;
  }

 private:
  PgnReader reader_;
  std::shared_ptr<const GameTasks> game_;
  std::size_t task_ = 0;
  std::uint32_t next_game_ = 0;
};

std::size_t CountTasks(std::string_view text) {
  std::size_t tasks = 0;
  PgnReader reader(text);
  while (const std::optional<PgnItem> item = reader.Next()) {
    tasks += ProofreadTasks(*item).size();
  }
  return tasks;
}

// Prints findings, wherever they were made.
class Printer {
 public:
  Printer(const Arguments& arguments, const Catalogue& words, std::ostream& out)
      : json_(arguments.format == Format::kJson), words_(words), out_(out) {}

  bool Print(const v1::Finding& finding) {
    ++findings_;
    out_ << (json_ ? JsonLine(finding) : TextOf(finding));
    return out_.good();
  }

  int Finish() {
    out_.flush();
    if (!out_.good()) {
      std::cerr << "assay: output: cannot write\n";
      return kCannotReadOrWrite;
    }
    if (!json_ && findings_ == 0) {
      out_ << words_.Find("label.nothing_found") << '\n';
    }
    return findings_ > 0 ? kItemsFailed : kSuccess;
  }

 private:
  std::string TextOf(const v1::Finding& finding) const {
    const std::string author(words_.Find("label.author"));
    const std::string found(words_.Find("label.found"));
    const std::size_t width = std::max(Width(author), Width(found)) + 2;
    const auto padded = [width](const std::string& label) {
      return "  " + label + std::string(width - Width(label), ' ');
    };
    return finding.place() + ": " + finding.title() + "\n" + padded(author) +
           finding.author_says() + "\n" + padded(found) + finding.found() +
           "\n\n";
  }

  const bool json_;
  const Catalogue& words_;
  std::ostream& out_;
  std::size_t findings_ = 0;
};

void FindHere(const Arguments& arguments, const Assayer& assayer,
              const Catalogue& words, const std::string& text,
              Printer& printer) {
  const ProofreadSettings settings{assayer, arguments.proof_nodes, nullptr,
                                   !arguments.static_only, words};
  ProgressLine progress(CountTasks(text), 0);
  Tasks tasks(text);
  ClashFinder clashes;
  InOrder<Task, Checked>([&](Task& task) { return tasks.Next(task); },
                         [&](const Task& task) {
                           return Proofread(task.game->tasks[task.task],
                                            task.game->game, task.game->item,
                                            settings);
                         },
                         [&](Checked& checked) {
                           clashes.Add(checked, words);
                           progress.Step();
                           bool good = true;
                           for (const Finding& finding : checked.findings) {
                             v1::Finding message;
                             ToProto(finding, assayer, &message);
                             good = printer.Print(message);
                           }
                           return good;
                         })
      .Run(JobsOf(arguments));
}

absl::Status FindThere(const Arguments& arguments, Client& client,
                       const std::string& text, Printer& printer) {
  // Without games there is nothing to ask, and servers refuse it.
  if (!PgnReader(std::string_view(text)).Next().has_value()) {
    return absl::OkStatus();
  }
  if (text.size() > kMostRemoteGamesBytes) {
    return TooLargeForServers(text.size());
  }
  v1::ProofreadLessonRequest request;
  request.set_pgn(text);
  *request.mutable_options() = RemoteOptions(arguments);
  ProgressLine progress(0, 0);
  return client.ProofreadLesson(
      request, [&](v1::ProofreadLessonResponse& answer) {
        if (answer.has_progress()) {
          progress.Reach(answer.progress().done(), answer.progress().total());
        }
        return !answer.has_finding() || printer.Print(answer.finding());
      });
}

}  // namespace

int RunProofread(const Arguments& arguments, const Assayer* assayer,
                 Client* client, std::ostream& out) {
  const absl::StatusOr<std::string> text = ReadGames(arguments);
  if (!text.ok()) return Fail(text.status());
  const Catalogue& words =
      Catalogue::OrEnglish(arguments.language, Audience::kClub);
  Printer printer(arguments, words, out);
  if (client == nullptr) {
    FindHere(arguments, *assayer, words, *text, printer);
  } else {
    const absl::Status asked = FindThere(arguments, *client, *text, printer);
    if (absl::IsInvalidArgument(asked)) return Fail(asked);
    if (!asked.ok()) return ServerFault(asked);
  }
  return printer.Finish();
}

}  // namespace assay::service
