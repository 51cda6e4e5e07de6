// What cannot be written is found before anything is; writing itself then has
// no errors, and the depth of its recursion is bounded.
#include "assay/notation/pgn_writer.h"

#include <algorithm>
#include <vector>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/notation/fen.h"
#include "assay/notation/pgn_filler.h"
#include "assay/notation/pgn_limits.h"
#include "assay/notation/pgn_tag_pair.h"
#include "assay/notation/san.h"

namespace assay {
namespace {

bool HasLineEnd(std::string_view text) {
  return text.find_first_of("\r\n") != std::string_view::npos;
}

std::string Escaped(std::string_view value) {
  std::string escaped;
  for (const char c : value) {
    if (c == '"' || c == '\\') escaped += '\\';
    escaped += c;
  }
  return escaped;
}

// ---- What a tree cannot have -----------------------------------------------

void CheckTag(const PgnTag& tag, std::vector<Problem>& problems) {
  if (tag.name.empty() || tag.name.size() > kMostPgnSymbolBytes ||
      !std::all_of(tag.name.begin(), tag.name.end(), IsTagNameByte)) {
    problems.push_back(
        {"tag", "bad name", Quoted(tag.name), "letters, digits and _+#=:-"});
  }
  if (HasLineEnd(tag.value)) {
    problems.push_back(
        {"tag", "line end in value", Quoted(tag.value), "one line"});
  }
  if (Escaped(tag.value).size() > kMostPgnTagValueBytes) {
    problems.push_back(
        {"tag", "value too long", Quoted(tag.value),
         "at most " + std::to_string(kMostPgnTagValueBytes) + " bytes"});
  }
}

void CheckComments(const std::vector<PgnComment>& comments,
                   std::vector<Problem>& problems) {
  for (const PgnComment& comment : comments) {
    const bool braces = comment.kind == PgnComment::Kind::kBraces;
    if (braces && comment.text.find('}') != std::string::npos) {
      problems.push_back({"comment", "right brace", Quoted(comment.text),
                          "none in a brace comment"});
    }
    if (!braces && HasLineEnd(comment.text)) {
      problems.push_back({"comment", "line end", Quoted(comment.text),
                          "none in a \";\" comment"});
    }
    if (comment.text.size() > kMostPgnCommentBytes) {
      problems.push_back(
          {"comment", "too long", Quoted(comment.text),
           "at most " + std::to_string(kMostPgnCommentBytes) + " bytes"});
    }
  }
}

std::size_t DeepestLine(const GameTree& tree) {
  struct Pending {
    NodeIndex node;
    std::size_t depth;
  };
  std::size_t deepest = 0;
  std::vector<Pending> stack = {{0, 0}};
  while (!stack.empty()) {
    const Pending line = stack.back();
    stack.pop_back();
    deepest = std::max(deepest, line.depth);
    for (NodeIndex i = line.node; i != kNoNode; i = tree.nodes[i].next) {
      for (const NodeIndex v : tree.nodes[i].variations) {
        stack.push_back({v, line.depth + 1});
      }
    }
  }
  return deepest;
}

std::vector<Problem> CheckTree(const GameTree& tree) {
  std::vector<Problem> problems;
  const auto limit = [&problems](const char* field, const char* reason,
                                 std::size_t found, std::size_t most) {
    if (found > most) {
      problems.push_back({field, reason, std::to_string(found),
                          "at most " + std::to_string(most)});
    }
  };
  limit("tag", "too many", tree.tags.size(), kMostPgnTags);
  for (const PgnTag& tag : tree.tags) CheckTag(tag, problems);
  CheckComments(tree.heading, problems);
  CheckComments(tree.closing, problems);
  for (const GameNode& node : tree.nodes) {
    CheckComments(node.comments, problems);
    limit("nag", "too many", node.nags.size(), kMostPgnNags);
  }
  limit("move", "too many", tree.nodes.size(), kMostPgnNodes);
  limit("variation", "nested too deep", DeepestLine(tree), kMostPgnDepth);
  if (problems.size() > kMostPgnFaults) problems.resize(kMostPgnFaults);
  return problems;
}

// ---- Tags ------------------------------------------------------------------

constexpr std::string_view kRoster[7] = {"Event", "Site",  "Date",  "Round",
                                         "White", "Black", "Result"};

// The FEN and SetUp tags say where the game starts.
void SetStartTags(const GameTree& tree, GameTree& tagged) {
  const std::string* fen = tagged.Tag("FEN");
  if (fen == nullptr && tree.start == Position::Initial()) return;
  if (fen != nullptr) {
    const absl::StatusOr<Position> told = PositionFromFen(*fen);
    if (told.ok() && *told == tree.start) return;
  }
  tagged.SetTag("SetUp", "1");
  tagged.SetTag("FEN", ToFen(tree.start));
}

std::vector<PgnTag> TagsToWrite(const GameTree& tree, PgnLayout layout) {
  GameTree tagged;
  tagged.tags = tree.tags;
  SetStartTags(tree, tagged);
  if (layout == PgnLayout::kAuthor) return tagged.tags;
  if (tagged.Tag("FEN") != nullptr) tagged.SetTag("SetUp", "1");
  tagged.SetTag("Result", ToString(tree.result));
  std::vector<PgnTag> tags;
  for (const std::string_view name : kRoster) {
    const std::string* value = tagged.Tag(name);
    const char* unknown = name == "Date" ? "????.??.??" : "?";
    tags.push_back({std::string(name), value != nullptr ? *value : unknown});
  }
  std::stable_sort(
      tagged.tags.begin(), tagged.tags.end(),
      [](const PgnTag& a, const PgnTag& b) { return a.name < b.name; });
  std::string_view last;
  for (const PgnTag& tag : tagged.tags) {
    const bool in_roster = std::find(std::begin(kRoster), std::end(kRoster),
                                     tag.name) != std::end(kRoster);
    if (!in_roster && tag.name != last) tags.push_back(tag);
    last = tag.name;
  }
  return tags;
}

// ---- Movetext --------------------------------------------------------------

class MovetextWriter {
 public:
  MovetextWriter(const GameTree& tree, PgnLayout layout, std::string& out)
      : tree_(tree), layout_(layout), filler_(out, tree.encoding) {}

  void WriteHeading() {
    for (const PgnComment& comment : tree_.heading) {
      WriteComment(comment);
      filler_.EndLine();
    }
  }

  void WriteMovetext() {
    WriteLine(0, tree_.start);
    filler_.Token(ToString(tree_.result));
    for (const PgnComment& comment : tree_.closing) {
      if (!filler_.at_line_start()) {
        filler_.Suffix(" ");  // on the terminator's line, else the next game's
        filler_.Join();
      }
      WriteComment(comment);
    }
    filler_.EndLine();
  }

 private:
  void WriteLine(NodeIndex start, Position position) {
    need_number_ = true;
    for (NodeIndex i = start; i != kNoNode; i = tree_.nodes[i].next) {
      const GameNode& node = tree_.nodes[i];
      const Position before = position;
      if (!node.starts_line) {
        WriteMove(before, node.move);
        position = before.AfterStep(node.move);
      }
      for (const std::uint8_t nag : node.nags) {
        filler_.Token("$" + std::to_string(nag));
      }
      WriteAround(node, before);
    }
  }

  void WriteMove(const Position& position, Move move) {
    const bool white = position.side_to_move() == Side::kWhite;
    if (white || need_number_) {
      filler_.Token(std::to_string(position.fullmove_number()) +
                    (white ? "." : "..."));
    }
    filler_.Token(ToSan(position, move));
    need_number_ = false;
  }

  // Comments and variations of a node, in the author's order.
  void WriteAround(const GameNode& node, const Position& before) {
    auto comment = node.comments.begin();
    for (std::size_t i = 0; i <= node.variations.size(); ++i) {
      while (comment != node.comments.end() &&
             (comment->after_variations <= i || i == node.variations.size())) {
        WriteComment(*comment++);
      }
      if (i == node.variations.size()) break;
      filler_.Token("(");
      filler_.Join();
      WriteLine(node.variations[i], before);
      filler_.Suffix(")");
      need_number_ = true;
    }
  }

  void WriteComment(const PgnComment& comment) {
    need_number_ = true;
    const bool has_brace = comment.text.find('}') != std::string::npos;
    if (layout_ == PgnLayout::kExport && !has_brace) {
      filler_.Words('{' + comment.text + '}');
    } else if (comment.kind == PgnComment::Kind::kBraces) {
      filler_.Token('{' + comment.text + '}');
    } else {
      filler_.Token(';' + comment.text);
      filler_.EndLine();
    }
  }

  const GameTree& tree_;
  PgnLayout layout_;
  PgnFiller filler_;
  bool need_number_ = true;
};

}  // namespace

absl::StatusOr<std::string> WritePgn(const GameTree& tree, PgnLayout layout) {
  const std::vector<Problem> problems = CheckTree(tree);
  if (!problems.empty()) return ProblemsStatus(problems);
  std::string text;
  MovetextWriter writer(tree, layout, text);
  writer.WriteHeading();
  const std::vector<PgnTag> tags = TagsToWrite(tree, layout);
  for (const PgnTag& tag : tags) {
    text += '[' + tag.name + " \"" + Escaped(tag.value) + "\"]\n";
  }
  if (!tags.empty()) text += '\n';
  writer.WriteMovetext();
  text += '\n';
  return text;
}

PgnComment MakeComment(std::string_view text) {
  PgnComment comment;
  comment.text = text;
  std::replace(comment.text.begin(), comment.text.end(), '{', '(');
  std::replace(comment.text.begin(), comment.text.end(), '}', ')');
  return comment;
}

}  // namespace assay
