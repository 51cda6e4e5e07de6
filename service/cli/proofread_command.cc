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

std::string TextOf(const Finding& finding, const Catalogue& words) {
  const std::string author(words.Find("label.author"));
  const std::string found(words.Find("label.found"));
  const std::size_t width = std::max(Width(author), Width(found)) + 2;
  const auto padded = [width](const std::string& label) {
    return "  " + label + std::string(width - Width(label), ' ');
  };
  return finding.place + ": " + finding.kind + "\n" + padded(author) +
         finding.author_says + "\n" + padded(found) + finding.found + "\n\n";
}

}  // namespace

int RunProofread(const Arguments& arguments, const Assayer& assayer,
                 std::ostream& out) {
  const absl::StatusOr<std::string> text = ReadGames(arguments);
  if (!text.ok()) {
    std::cerr << "assay: " << text.status().message() << '\n';
    return absl::IsUnavailable(text.status()) ? kCannotReadOrWrite : kBadUsage;
  }
  const Catalogue& words =
      Catalogue::OrEnglish(arguments.language, Audience::kClub);
  const ProofreadSettings settings{assayer, arguments.proof_nodes, nullptr,
                                   !arguments.static_only, words};
  ProgressLine progress(CountTasks(*text), 0);
  Tasks tasks(*text);
  ClashFinder clashes;
  std::size_t findings = 0;
  const auto print = [&](Checked& checked) {
    clashes.Add(checked, words);
    for (const Finding& finding : checked.findings) {
      ++findings;
      if (arguments.format == Format::kJson) {
        v1::Finding message;
        ToProto(finding, assayer, &message);
        out << JsonLine(message);
      } else {
        out << TextOf(finding, words);
      }
    }
    progress.Step();
    return out.good();
  };
  InOrder<Task, Checked> run([&](Task& task) { return tasks.Next(task); },
                             [&](const Task& task) {
                               return Proofread(task.game->tasks[task.task],
                                                task.game->game,
                                                task.game->item, settings);
                             },
                             print);
  const bool written = run.Run(JobsOf(arguments));
  out.flush();
  if (!written || !out.good()) {
    std::cerr << "assay: output: cannot write\n";
    return kCannotReadOrWrite;
  }
  if (arguments.format == Format::kText && findings == 0) {
    out << words.Find("label.nothing_found") << '\n';
  }
  return findings > 0 ? kItemsFailed : kSuccess;
}

}  // namespace assay::service
