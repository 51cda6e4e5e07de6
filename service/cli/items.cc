#include "service/cli/items.h"

#include <utility>

#include "assay/explain/line_text.h"
#include "service/cli/input.h"

namespace assay::service {
namespace {

class Lines : public ItemSource {
 public:
  explicit Lines(std::istream& in) : in_(in) {}

  bool Next(Item& item) override {
    item = Item();
    return ReadLine(in_, item.line);
  }

 private:
  std::istream& in_;
};

class Games : public ItemSource {
 public:
  Games(std::istream& in, const PlySelection& selection)
      : reader_([&in](char* to, std::size_t most) {
          in.read(to, static_cast<std::streamsize>(most));
          return static_cast<std::size_t>(in.gcount());
        }),
        selection_(selection) {}

  bool Next(Item& item) override {
    while (ready_.empty()) {
      const std::optional<PgnItem> game = reader_.Next();
      if (!game.has_value()) return false;
      Take(*game);
    }
    item = std::move(ready_.front());
    ready_.pop_front();
    return true;
  }

 private:
  void Take(const PgnItem& game) {
    ++game_;
    const std::string where = "game " + std::to_string(game_);
    Item last;
    WalkTree(game.tree, [&](const TreeStep& step) {
      if (step.depth != 0) return;
      const bool start = step.node.starts_line;
      last = Item();
      last.position = step.after;
      last.label = where + (start ? ", start"
                                  : ", after " + NumberedMove(step.before,
                                                              step.node.move));
      if (Selected(step.ply)) ready_.push_back(last);
    });
    if (selection_.last && last.position.has_value()) ready_.push_back(last);
    if (!game.ok()) {
      Item faulty;
      faulty.fault = game.status();
      faulty.label = where;
      ready_.push_back(std::move(faulty));
    } else if (ready_.empty()) {
      Item missing;
      missing.fault = absl::InvalidArgumentError(
          where + ": --ply: the game is too short: found " +
          std::to_string(game.tree.MainLine().size() - 1) + " plies");
      missing.label = where;
      ready_.push_back(std::move(missing));
    }
  }

  bool Selected(int ply) const {
    if (selection_.ply.has_value()) return ply == *selection_.ply;
    return !selection_.last && ply % selection_.every == 0;
  }

  PgnReader reader_;
  const PlySelection selection_;
  int game_ = 0;
  std::deque<Item> ready_;
};

}  // namespace

absl::StatusOr<NamedRecord> ReadItem(const Item& item) {
  if (!item.fault.ok()) return item.fault;
  NamedRecord named;
  named.label = item.label;
  if (item.position.has_value()) {
    named.record.position = *item.position;
    return named;
  }
  absl::StatusOr<EpdRecord> record = ParseEpd(item.line);
  if (!record.ok()) return record.status();
  named.record = *std::move(record);
  const EpdOperation* id = named.record.Find("id");
  if (id != nullptr && !id->operands.empty()) {
    named.label = id->operands.front().text;
  }
  return named;
}

std::unique_ptr<ItemSource> LineItems(std::istream& in) {
  return std::make_unique<Lines>(in);
}

std::unique_ptr<ItemSource> GameItems(std::istream& in,
                                      const PlySelection& selection) {
  return std::make_unique<Games>(in, selection);
}

}  // namespace assay::service
