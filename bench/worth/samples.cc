#include "bench/worth/samples.h"

#include <fstream>
#include <memory>
#include <optional>

#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/notation/fen.h"
#include "assay/notation/pgn_reader.h"

namespace assay::bench {
namespace {

constexpr int kFirstPly = 24;
constexpr int kPliesBetween = 4;

// "0", "0.5" and "1", or nothing.
std::optional<double> Points(const std::string& text) {
  if (text == "0") return 0.0;
  if (text == "0.5") return 0.5;
  if (text == "1") return 1.0;
  return std::nullopt;
}

std::optional<double> Points(GameResult result) {
  switch (result) {
    case GameResult::kWhiteWins:
      return 1.0;
    case GameResult::kBlackWins:
      return 0.0;
    case GameResult::kDraw:
      return 0.5;
    case GameResult::kUnknown:
      break;
  }
  return std::nullopt;
}

bool NothingHangs(const Position& position) {
  const Facts facts(position);
  for (const Side side : kSides) {
    for (const Square square : Each(AttackedPieces(facts, side))) {
      if (ExchangeValueOf(facts, square) > 0) return false;
    }
  }
  return true;
}

void VisitGame(const GameTree& tree, double points, const std::string& game,
               const SampleVisitor& visit, ReadCount& count) {
  Position position = tree.start;
  int ply = 0;
  for (const NodeIndex index : tree.MainLine()) {
    const Move move = tree.nodes[index].move;
    if (move.is_null()) return;  // a pass: no game from here on
    const bool forcing = move.is_promotion() ||
                         move.type() == Move::Type::kEnPassant ||
                         !position.At(move.to()).empty();
    position = position.After(move);
    ++ply;
    if (ply < kFirstPly || ply % kPliesBetween != 0 || forcing ||
        position.InCheck() || !NothingHangs(position)) {
      continue;
    }
    ++count.samples;
    visit({position, points, game});
  }
}

}  // namespace

ReadCount ReadLines(std::istream& in, const SampleVisitor& visit) {
  ReadCount count;
  std::uint64_t number = 0;
  for (std::string line; std::getline(in, line);) {
    ++number;
    if (!line.empty() && line.back() == '\r') line.pop_back();
    const std::size_t first = line.find('\t');
    const std::size_t second =
        first == std::string::npos ? first : line.find('\t', first + 1);
    const std::optional<double> points =
        first == std::string::npos
            ? std::nullopt
            : Points(line.substr(first + 1, second - first - 1));
    const absl::StatusOr<Position> position =
        PositionFromFen(line.substr(0, first));
    if (!points.has_value() || !position.ok()) {
      ++count.faulty;
      continue;
    }
    ++count.samples;
    visit({*position, *points,
           second == std::string::npos ? std::to_string(number)
                                       : line.substr(second + 1)});
  }
  return count;
}

ReadCount ReadGames(const std::string& path, const SampleVisitor& visit) {
  ReadCount count;
  const auto file = std::make_shared<std::ifstream>(path, std::ios::binary);
  PgnReader reader(PgnSource([file](char* bytes, std::size_t size) {
    file->read(bytes, static_cast<std::streamsize>(size));
    return static_cast<std::size_t>(file->gcount());
  }));
  std::uint64_t number = 0;
  while (const std::optional<PgnItem> item = reader.Next()) {
    ++number;
    const std::optional<double> points = Points(item->tree.result);
    if (!item->ok() || !points.has_value()) {
      ++count.faulty;
      continue;
    }
    VisitGame(item->tree, *points, std::to_string(number), visit, count);
  }
  return count;
}

}  // namespace assay::bench
