// How fast PGN is read: tags and move texts alone, and with every move played.
//
// The text is 1,000 random games that the benchmark makes up itself, the same
// on every machine, with the seven tags, a comment every 20 plies and a
// variation every 30. Before anything is timed, what is read is checked
// against what was made: games, moves, and the hash of every last position.
#include <benchmark/benchmark.h>

#include <cstdint>
#include <random>
#include <string>

#include "assay/notation/pgn_reader.h"
#include "assay/notation/pgn_skimmer.h"
#include "assay/notation/pgn_writer.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

constexpr int kGames = 1000;
constexpr int kPlies = 80;

struct Answer {
  std::uint64_t games = 0;
  std::uint64_t moves = 0;   // of main lines
  std::uint64_t hashes = 0;  // of last positions, xored

  friend bool operator==(const Answer& a, const Answer& b) {
    return a.games == b.games && a.moves == b.moves && a.hashes == b.hashes;
  }
};

struct Corpus {
  std::string text;
  Answer answer;
};

Move RandomMove(const Position& position, std::mt19937_64& random) {
  MoveList moves;
  LegalMoves(position, moves);
  return moves.empty() ? Move() : moves[random() % moves.size()];
}

GameTree MakeGame(std::mt19937_64& random) {
  GameTree tree;
  tree.SetTag("Event", "Benchmark");
  tree.SetTag("White", "One, Player");
  tree.SetTag("Black", "Other, Player");
  Position position = tree.start;
  NodeIndex last = 0;
  for (int ply = 0; ply < kPlies; ++ply) {
    const Move move = RandomMove(position, random);
    if (move.is_null()) break;
    last = tree.Append(last, move);
    if (ply % 20 == 10) {
      tree.nodes[last].comments.push_back(
          MakeComment("A remark of usual length on the move before it."));
      tree.nodes[last].nags.push_back(14);
    }
    if (ply % 30 == 15) {
      Position other = position;
      NodeIndex node = tree.AddVariation(last);
      for (int i = 0; i < 4; ++i) {
        const Move instead = RandomMove(other, random);
        if (instead.is_null()) break;
        node = tree.Append(node, instead);
        other.Make(instead);
      }
    }
    position.Make(move);
  }
  return tree;
}

const Corpus& TheCorpus() {
  static const Corpus corpus = [] {
    Corpus made;
    std::mt19937_64 random(20240101);
    for (int i = 0; i < kGames; ++i) {
      const GameTree tree = MakeGame(random);
      const std::vector<NodeIndex> line = tree.MainLine();
      ++made.answer.games;
      made.answer.moves += line.size();
      made.answer.hashes ^= tree.PositionAfter(line.back()).hash();
      made.text += WritePgn(tree, PgnLayout::kExport).value_or("");
    }
    return made;
  }();
  return corpus;
}

Answer Read(const std::string& text) {
  Answer answer;
  PgnReader reader{std::string_view(text)};
  while (const std::optional<PgnItem> item = reader.Next()) {
    ++answer.games;
    for (NodeIndex i = item->tree.nodes[0].next; i != kNoNode;
         i = item->tree.nodes[i].next) {
      ++answer.moves;
    }
  }
  return answer;
}

// The check before timing: hashes, too.
Answer ReadAndPlay(const std::string& text) {
  Answer answer = Read(text);
  PgnReader reader{std::string_view(text)};
  while (const std::optional<PgnItem> item = reader.Next()) {
    const std::vector<NodeIndex> line = item->tree.MainLine();
    if (!line.empty()) {
      answer.hashes ^= item->tree.PositionAfter(line.back()).hash();
    }
  }
  return answer;
}

Answer Skim(const std::string& text) {
  Answer answer;
  PgnSkimmer skimmer{std::string_view(text)};
  SkimmedGame game;
  while (skimmer.Next(game)) {
    ++answer.games;
    answer.moves += game.move_count;
  }
  return answer;
}

void Report(benchmark::State& state) {
  const auto times = static_cast<std::int64_t>(state.iterations());
  const Corpus& corpus = TheCorpus();
  state.SetBytesProcessed(times *
                          static_cast<std::int64_t>(corpus.text.size()));
  state.counters["moves"] = benchmark::Counter(
      static_cast<double>(corpus.answer.moves) * static_cast<double>(times),
      benchmark::Counter::kIsRate);
}

void BM_PgnRead(benchmark::State& state) {
  const Corpus& corpus = TheCorpus();
  if (!(ReadAndPlay(corpus.text) == corpus.answer)) {
    state.SkipWithError("what is read is not what was written");
    return;
  }
  for (auto _ : state) benchmark::DoNotOptimize(Read(corpus.text));
  Report(state);
}
BENCHMARK(BM_PgnRead)->Unit(benchmark::kMillisecond);

void BM_PgnSkim(benchmark::State& state) {
  const Corpus& corpus = TheCorpus();
  Answer expected = corpus.answer;
  expected.hashes = 0;
  if (!(Skim(corpus.text) == expected)) {
    state.SkipWithError("what is skimmed is not what was written");
    return;
  }
  for (auto _ : state) benchmark::DoNotOptimize(Skim(corpus.text));
  Report(state);
}
BENCHMARK(BM_PgnSkim)->Unit(benchmark::kMillisecond);

void BM_PgnWrite(benchmark::State& state) {
  PgnReader reader{std::string_view(TheCorpus().text)};
  std::vector<GameTree> trees;
  while (std::optional<PgnItem> item = reader.Next()) {
    trees.push_back(std::move(item->tree));
  }
  for (auto _ : state) {
    std::size_t bytes = 0;
    for (const GameTree& tree : trees) {
      bytes += WritePgn(tree, PgnLayout::kExport).value_or("").size();
    }
    if (bytes != TheCorpus().text.size()) {
      state.SkipWithError("what is written is not what was read");
    }
  }
  Report(state);
}
BENCHMARK(BM_PgnWrite)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace assay
