// Three passes over the text: one chooses, one finds where else the chosen
// positions arise, and the reader makes them. Games are cheap to read again;
// to keep all of them would not be.
#include "assay/lesson/key_positions.h"

#include <unordered_map>
#include <utility>

#include "assay/lesson/own_comments.h"
#include "assay/lesson/place.h"
#include "assay/lesson/turning_points.h"

namespace assay {
namespace {

enum Reason : std::uint8_t {
  kCommented = 1,
  kAssessed = 2,
  kLineEnds = 4,
  kTurns = 8,
  kEveryPlies = 16,
};

bool SaysSomething(const GameTree& tree) {
  for (const GameNode& node : tree.nodes) {
    if (AssessmentOf(node) != 0 || !AuthorWords(tree, node).empty()) {
      return true;
    }
  }
  return false;
}

LessonSelection SelectionFor(const LessonSelection& asked,
                             const GameTree& tree) {
  if (!asked.nothing()) return asked;
  LessonSelection selection;
  selection.comments = true;
  selection.assessments = true;
  selection.line_ends = true;
  selection.turning_points = !SaysSomething(tree);
  return selection;
}

std::uint8_t ReasonsFor(const GameTree& tree, const TreeStep& step,
                        const LessonSelection& selection) {
  std::uint8_t reasons = 0;
  if (selection.comments && !AuthorWords(tree, step.node).empty()) {
    reasons |= kCommented;
  }
  if (selection.assessments && AssessmentOf(step.node) != 0) {
    reasons |= kAssessed;
  }
  const bool moved = !step.node.starts_line;
  if (selection.line_ends && moved && step.node.next == kNoNode) {
    reasons |= kLineEnds;
  }
  if (selection.every_plies > 0 && step.depth == 0 && step.ply > 0 &&
      step.ply % static_cast<int>(selection.every_plies) == 0) {
    reasons |= kEveryPlies;
  }
  return reasons;
}

}  // namespace

Lesson::Lesson(std::string_view pgn, const LessonSelection& selection,
               const Assayer& assayer, const std::atomic<bool>* cancelled,
               const Catalogue& words)
    : text_(WithoutOurs(pgn)), cancelled_(cancelled), words_(words) {
  every_ = selection.every_plies;
  Choose(selection, assayer);
  FindOtherPlaces();
}

void Lesson::Choose(const LessonSelection& selection, const Assayer& assayer) {
  std::unordered_map<std::uint64_t, std::uint32_t> first_of;
  PgnReader reader(text_);
  while (const std::optional<PgnItem> item = reader.Next()) {
    const GameTree& tree = item->tree;
    const LessonSelection here = SelectionFor(selection, tree);
    std::map<NodeIndex, std::string> turns;
    if (Cancelled()) return;
    if (here.turning_points) {
      turns = TurningPoints(tree, assayer, cancelled_, words_);
    }
    WalkTree(tree, [&](const TreeStep& step) {
      Entry entry;
      entry.game = games_;
      entry.node = step.index;
      entry.reasons = ReasonsFor(tree, step, here);
      const auto turn = turns.find(step.index);
      if (turn != turns.end()) entry.reasons |= kTurns;
      if (entry.reasons == 0) return;
      const auto at = static_cast<std::uint32_t>(entries_.size());
      const auto known = first_of.emplace(step.after.hash(), at);
      entry.first = known.first->second;
      if (known.second) {
        entry.number = static_cast<std::uint32_t>(size_++);
        if (turn != turns.end()) turns_.emplace(at, turn->second);
      } else {
        entry.number = entries_[entry.first].number;
        places_.emplace(entry.first, "");
      }
      entries_.push_back(entry);
    });
    ++games_;
  }
}

void Lesson::FindOtherPlaces() {
  std::unordered_map<std::uint64_t, std::uint32_t> first_of;
  std::size_t next = 0;
  std::uint32_t game = 0;
  PgnReader choosing(text_);
  // Hashes again, rather than kept: they are wanted here alone.
  while (const std::optional<PgnItem> item = choosing.Next()) {
    WalkTree(item->tree, [&](const TreeStep& step) {
      if (next == entries_.size() || entries_[next].game != game ||
          entries_[next].node != step.index) {
        return;
      }
      const auto at = static_cast<std::uint32_t>(next);
      first_of.emplace(step.after.hash(), at);
      const auto place = places_.find(at);
      if (place != places_.end()) {
        place->second = PlaceText(game, item->tree, step.index, words_);
      }
      ++next;
    });
    ++game;
  }
  game = 0;
  PgnReader reader(text_);
  while (const std::optional<PgnItem> item = reader.Next()) {
    if (Cancelled()) return;
    WalkTree(item->tree, [&](const TreeStep& step) {
      // Where nothing was played yet, nothing was reached by another order;
      // and a line's start is the position of the move before it.
      if (step.ply == 0 || step.node.starts_line) return;
      const auto found = first_of.find(step.after.hash());
      if (found == first_of.end()) return;
      const Entry& entry = entries_[found->second];
      if (entry.game == game && entry.node == step.index) return;
      std::vector<std::string>& others = others_[found->second];
      if (others.size() > kMostOtherPlaces) return;
      if (others.size() == kMostOtherPlaces) {
        others.push_back(words_.Text(Say("place.further")));
        return;
      }
      others.push_back(PlaceText(game, item->tree, step.index, words_) + ": " +
                       OrderText(item->tree, step.index));
    });
    ++game;
  }
}

LessonReader::LessonReader(const Lesson& lesson)
    : lesson_(lesson), reader_(lesson.text_) {}

std::optional<LessonGame> LessonReader::Next() {
  std::optional<PgnItem> item = reader_.Next();
  if (!item.has_value()) return std::nullopt;
  std::optional<LessonGame> game(std::in_place);
  game->game = game_++;
  game->item = *std::move(item);
  const GameTree& tree = game->item.tree;
  std::unordered_map<NodeIndex, std::size_t> number_at;
  WalkTree(tree, [&](const TreeStep& step) {
    if (next_ == lesson_.entries_.size()) return;
    const Lesson::Entry& entry = lesson_.entries_[next_];
    if (entry.game != game->game || entry.node != step.index) return;
    ++next_;
    KeyPosition key = Make(*game, entry, step.after);
    for (NodeIndex i = tree.nodes[step.index].parent; i != kNoNode;
         i = tree.nodes[i].parent) {
      const auto found = number_at.find(i);
      if (found == number_at.end()) continue;
      key.previous = found->second;
      break;
    }
    number_at.emplace(step.index, key.index);
    game->keys.push_back(std::move(key));
  });
  return game;
}

KeyPosition LessonReader::Make(const LessonGame& game,
                               const Lesson::Entry& entry,
                               const Position& position) const {
  const GameTree& tree = game.item.tree;
  KeyPosition key(position);
  key.game = game.game;
  key.node = entry.node;
  key.index = entry.number;
  key.path = PathTo(tree, entry.node);
  const Lesson::Entry& first = lesson_.entries_[entry.first];
  const bool repeated = first.game != entry.game || first.node != entry.node;
  if (repeated) {
    key.explained_at = lesson_.places_.at(entry.first);
    return key;
  }
  std::vector<Message> because;
  if ((entry.reasons & kCommented) != 0) {
    because.push_back(Say("because.commented"));
  }
  if ((entry.reasons & kAssessed) != 0) {
    because.push_back(
        Say("because.assessed", AssessmentOf(tree.nodes[entry.node])));
  }
  if ((entry.reasons & kLineEnds) != 0) {
    because.push_back(Say("because.line_ends"));
  }
  if ((entry.reasons & kTurns) != 0) {
    because.push_back(Moves(lesson_.turns_.at(entry.first)));
  }
  if ((entry.reasons & kEveryPlies) != 0) {
    because.push_back(
        Say("because.every_plies", static_cast<int>(lesson_.every_)));
  }
  key.because = lesson_.words_.Text(And(std::move(because)));
  const auto others = lesson_.others_.find(entry.first);
  if (others != lesson_.others_.end()) key.also_reached = others->second;
  return key;
}

}  // namespace assay
