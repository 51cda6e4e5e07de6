// Shows how the library reads a PGN file, for programs that compare it with
// other readers.
//
//   pgn_dump tree FILE     one JSON object a game, with its whole tree
//   pgn_dump export FILE   the games in export format
//   pgn_dump author FILE   the games with the author's text kept
//   pgn_dump skim FILE     games, moves and tags, without a board
//   pgn_dump count FILE    games, faulty games and moves, all moves played
//   pgn_dump fens FILE     the positions of each game's main line, FEN a line
//   pgn_dump epd FILE      the positions of EPD records, FEN a line
//   pgn_dump random N      N random games of plain kinds in export format
//
// export and author leave out faulty games. Exit 1 where the file cannot be
// read.
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <istream>
#include <string>

#include "assay/notation/epd.h"
#include "assay/notation/fen.h"
#include "assay/notation/pgn_reader.h"
#include "assay/notation/pgn_skimmer.h"
#include "assay/notation/pgn_writer.h"
#include "assay/notation/san.h"
#include "tests/support/random_game.h"

namespace {

using assay::GameNode;
using assay::GameTree;
using assay::NodeIndex;
using assay::PgnComment;
using assay::Position;

class JsonPrinter {
 public:
  JsonPrinter(const GameTree& tree, std::string& out)
      : tree_(tree), out_(out) {}

  void String(std::string_view bytes) {
    out_ += '"';
    for (const char c : assay::ToUtf8(bytes, tree_.encoding)) {
      if (c == '"' || c == '\\') {
        out_ += '\\';
        out_ += c;
      } else if (static_cast<unsigned char>(c) < 0x20) {
        char code[8];
        std::snprintf(code, sizeof code, "\\u%04x", c);
        out_ += code;
      } else {
        out_ += c;
      }
    }
    out_ += '"';
  }

  void Comments(const std::vector<PgnComment>& comments) {
    out_ += "\"comments\":[";
    for (std::size_t i = 0; i < comments.size(); ++i) {
      if (i > 0) out_ += ',';
      String(comments[i].text);
    }
    out_ += ']';
  }

  void Annotations(const GameNode& node) {
    out_ += "\"nags\":[";
    for (std::size_t i = 0; i < node.nags.size(); ++i) {
      if (i > 0) out_ += ',';
      out_ += std::to_string(node.nags[i]);
    }
    out_ += "],";
    Comments(node.comments);
  }

  void Line(NodeIndex start, Position position) {
    out_ += '{';
    Annotations(tree_.nodes[start]);
    out_ += ",\"moves\":[";
    for (NodeIndex i = tree_.nodes[start].next; i != assay::kNoNode;
         i = tree_.nodes[i].next) {
      const GameNode& node = tree_.nodes[i];
      if (i != tree_.nodes[start].next) out_ += ',';
      out_ += "{\"san\":\"" + ToSan(position, node.move) + "\",";
      Annotations(node);
      out_ += ",\"variations\":[";
      for (std::size_t v = 0; v < node.variations.size(); ++v) {
        if (v > 0) out_ += ',';
        Line(node.variations[v], position);
      }
      out_ += "]}";
      position = position.AfterStep(node.move);
    }
    out_ += "]}";
  }

 private:
  const GameTree& tree_;
  std::string& out_;
};

void PrintTree(const assay::PgnItem& item, std::string& out) {
  const GameTree& tree = item.tree;
  JsonPrinter json(tree, out);
  out += "{\"faults\":[";
  for (std::size_t i = 0; i < item.faults.size(); ++i) {
    if (i > 0) out += ',';
    const assay::PgnFault& fault = item.faults[i];
    out += "{\"line\":" + std::to_string(fault.place.line) + ",\"reason\":";
    json.String(fault.problem.field + ": " + fault.problem.reason);
    out += '}';
  }
  out += "],\"tags\":[";
  for (std::size_t i = 0; i < tree.tags.size(); ++i) {
    if (i > 0) out += ',';
    out += '[';
    json.String(tree.tags[i].name);
    out += ',';
    json.String(tree.tags[i].value);
    out += ']';
  }
  out += "],\"fen\":\"" + ToFen(tree.start) + "\",\"result\":\"";
  out += ToString(tree.result);
  out += "\",\"main\":";
  json.Line(0, tree.start);
  out += "}\n";
}

int Read(const std::string& mode, assay::PgnReader reader) {
  std::size_t games = 0;
  std::size_t faulty = 0;
  std::size_t moves = 0;
  while (const auto item = reader.Next()) {
    ++games;
    faulty += item->ok() ? 0 : 1;
    moves += item->tree.nodes.size() - 1;
    std::string out;
    if (mode == "tree") {
      PrintTree(*item, out);
    } else if (mode == "fens") {
      WalkTree(item->tree, [&out](const assay::TreeStep& step) {
        if (step.depth == 0) out += ToFen(step.after) + '\n';
      });
    } else if (mode != "count" && item->ok()) {
      const auto text = assay::WritePgn(
          item->tree, mode == "export" ? assay::PgnLayout::kExport
                                       : assay::PgnLayout::kAuthor);
      if (text.ok()) out = *text;
    }
    std::cout << out;
  }
  if (mode == "count") {
    std::cout << games << " games, " << faulty << " faulty, " << moves
              << " moves\n";
  }
  return 0;
}

int Skim(assay::PgnSkimmer skimmer) {
  std::size_t games = 0;
  std::size_t moves = 0;
  std::size_t tags = 0;
  assay::SkimmedGame game;
  while (skimmer.Next(game)) {
    ++games;
    moves += game.move_count;
    tags += game.tags.size();
  }
  std::cout << games << " games, " << moves << " moves, " << tags << " tags\n";
  return 0;
}

int Epd(std::istream& file) {
  std::string line;
  while (std::getline(file, line)) {
    const auto record = assay::ParseEpd(line);
    std::cout << (record.ok() ? ToFen(record->position)
                              : std::string(record.status().message()))
              << '\n';
  }
  return 0;
}

int Random(std::uint64_t count) {
  for (std::uint64_t seed = 0; seed < count; ++seed) {
    const auto text =
        assay::WritePgn(assay::testing_support::PlainRandomGame(seed),
                        assay::PgnLayout::kExport);
    if (text.ok()) std::cout << *text;
  }
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "usage: pgn_dump tree|export|author|skim|count|fens|epd "
                 "FILE\n"
                 "       pgn_dump random N\n";
    return 2;
  }
  const std::string mode = argv[1];
  if (mode == "random") return Random(std::strtoull(argv[2], nullptr, 10));
  std::ifstream file(argv[2], std::ios::binary);
  if (!file) {
    std::cerr << "cannot read " << argv[2] << '\n';
    return 1;
  }
  if (mode == "epd") return Epd(file);
  const assay::PgnSource source = [&file](char* to, std::size_t size) {
    file.read(to, static_cast<std::streamsize>(size));
    return static_cast<std::size_t>(file.gcount());
  };
  return mode == "skim" ? Skim(assay::PgnSkimmer(source))
                        : Read(mode, assay::PgnReader(source));
}
