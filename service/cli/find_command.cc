// Positions of all lines of all games through a few threads; a game at a time
// is one task, so that runs of hits can be told from their beginnings.
#include <algorithm>
#include <iostream>
#include <map>
#include <memory>

#include "assay/lesson/condition.h"
#include "assay/lesson/place.h"
#include "assay/notation/epd.h"
#include "assay/notation/fen.h"
#include "assay/notation/pgn_writer.h"
#include "service/cli/commands.h"
#include "service/cli/in_order.h"
#include "service/cli/input.h"

namespace assay::service {
namespace {

struct Task {
  std::uint32_t game = 0;
  std::shared_ptr<const PgnItem> item;
};

struct Hits {
  std::string text;
  std::string errors;
  std::size_t count = 0;
};

class Finder {
 public:
  Finder(const Arguments& arguments, const Assayer& assayer,
         std::vector<Condition> conditions)
      : arguments_(arguments),
        assayer_(assayer),
        conditions_(std::move(conditions)),
        words_(Catalogue::OrEnglish(arguments.language, Audience::kClub)) {
    options_.proof_nodes = arguments.proof_nodes;
    options_.static_only = arguments.proof_nodes == 0;
    for (const Condition& condition : conditions_) {
      options_.all_claims = options_.all_claims || condition.needs_all_claims();
    }
  }

  Hits Find(const Task& task) const {
    Hits hits;
    const GameTree& tree = task.item->tree;
    std::map<NodeIndex, bool> hit_at;
    WalkTree(tree, [&](const TreeStep& step) {
      const NodeIndex parent = step.node.parent;
      const bool before = parent != kNoNode && hit_at[parent];
      if (step.node.starts_line && parent != kNoNode) {
        hit_at[step.index] = before;
        return;
      }
      const bool hit = Holds(step.after);
      hit_at[step.index] = hit;
      if (!hit || (before && !arguments_.every_hit)) return;
      ++hits.count;
      hits.text += TextOf(task, step);
    });
    if (!task.item->ok()) {
      hits.errors = std::string(task.item->status().message());
    }
    return hits;
  }

 private:
  bool Holds(const Position& position) const {
    const Explanation explanation = assayer_.Explain(position, options_);
    return std::all_of(conditions_.begin(), conditions_.end(),
                       [&](const Condition& condition) {
                         return condition.Holds(explanation);
                       });
  }

  std::string TextOf(const Task& task, const TreeStep& step) const {
    const GameTree& tree = task.item->tree;
    const std::string place = PlaceText(task.game, tree, step.index, words_);
    if (arguments_.format == Format::kEpd) {
      EpdRecord record;
      record.position = step.after;
      record.Set({"id", {EpdString(place)}});
      const absl::StatusOr<std::string> line = WriteEpd(record);
      return line.ok() ? *line + "\n" : "";
    }
    GameTree found;
    found.encoding = tree.encoding;
    for (const char* tag :
         {"Event", "Site", "Date", "Round", "White", "Black"}) {
      const std::string* value = tree.Tag(tag);
      found.SetTag(tag, value != nullptr ? *value : "?");
    }
    found.SetTag("Result", "*");
    found.SetTag("SetUp", "1");
    found.SetTag("FEN", ToFen(step.after));
    found.start = step.after;
    found.nodes[0].comments.push_back(
        MakeComment(words_.Text(Sentence(Say("find.found", place)))));
    const absl::StatusOr<std::string> text =
        WritePgn(found, PgnLayout::kAuthor);
    return text.ok() ? *text : "";
  }

  const Arguments& arguments_;
  const Assayer& assayer_;
  const std::vector<Condition> conditions_;
  const Catalogue& words_;
  ExplainOptions options_;
};

int Failure(const absl::Status& status) {
  std::cerr << "assay: " << status.message() << '\n';
  return absl::IsUnavailable(status) ? kCannotReadOrWrite : kBadUsage;
}

}  // namespace

int RunFind(const Arguments& arguments, const Assayer& assayer,
            std::ostream& out) {
  if (arguments.operands.size() < 2) {
    std::cerr << "assay: condition: missing: found none, expected a file of "
                 "games and conditions such as centre=closed\n";
    return kBadUsage;
  }
  std::vector<Condition> conditions;
  for (std::size_t i = 1; i < arguments.operands.size(); ++i) {
    absl::StatusOr<Condition> condition =
        Condition::Parse(arguments.operands[i]);
    if (!condition.ok()) return Failure(condition.status());
    conditions.push_back(*std::move(condition));
  }
  Arguments file = arguments;
  file.operands.resize(1);
  const absl::StatusOr<Input> input = OpenInput(file);
  if (!input.ok()) return Failure(input.status());
  if (!input->is_batch) {
    return Failure(absl::UnavailableError("file: cannot read: found " +
                                          arguments.operands[0] +
                                          ", expected a file of games"));
  }
  std::istream& in = input->file != nullptr ? *input->file : std::cin;
  PgnReader reader([&in](char* to, std::size_t most) {
    in.read(to, static_cast<std::streamsize>(most));
    return static_cast<std::size_t>(in.gcount());
  });
  const Finder finder(arguments, assayer, std::move(conditions));
  std::uint32_t games = 0;
  bool failed = false;
  InOrder<Task, Hits> run(
      [&](Task& task) {
        std::optional<PgnItem> item = reader.Next();
        if (!item.has_value()) return false;
        task.game = games++;
        task.item = std::make_shared<const PgnItem>(*std::move(item));
        return true;
      },
      [&](const Task& task) { return finder.Find(task); },
      [&](Hits& hits) {
        out << hits.text;
        out.flush();
        if (!hits.errors.empty()) {
          failed = true;
          std::cerr << "assay: " << hits.errors << '\n';
        }
        return out.good();
      });
  if (!run.Run(JobsOf(arguments)) || !out.good()) {
    return Failure(absl::UnavailableError("output: cannot write"));
  }
  return failed ? kItemsFailed : kSuccess;
}

}  // namespace assay::service
