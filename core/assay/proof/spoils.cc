// The decisive capture is the first after which the winner keeps a good part
// of the final gain, whatever follows in the line. Balances are compared after
// the winner's moves alone, since in between an exchange is half done, and
// after the answers to its quiet ones, by which it may give back what it won.
#include "assay/proof/spoils.h"

#include <algorithm>
#include <cstdlib>

#include "assay/facts/claim_makers.h"
#include "assay/facts/exchange.h"

namespace assay {
namespace {

// Where the unit that stands on the square before the ply's move stood at
// first.
Square StartOf(const std::vector<Move>& line, std::size_t ply, Square square) {
  for (std::size_t i = ply; i-- > 0;) {
    if (line[i].is_null()) continue;
    if (line[i].to() == square) {
      square = line[i].from();
    } else if (line[i].type() == Move::Type::kCastling &&
               RankOf(line[i].to()) == RankOf(square)) {
      // The rook that castling put there.
      const bool king_side = FileOf(line[i].to()) == 6;
      if (FileOf(square) == (king_side ? 5 : 3)) {
        square = MakeSquare(king_side ? 7 : 0, RankOf(square));
      }
    }
  }
  return square;
}

// The part of the final gain that has to be kept: two fifths, so that a rook
// and a knight won one after the other start with either.
constexpr int kKeptOfFive = 2;

// Less than the difference between any two kinds but bishop and knight.
constexpr int kSmallChange = 50;

Square CapturedOn(Move move) {
  return move.type() == Move::Type::kEnPassant
             ? MakeSquare(FileOf(move.to()), RankOf(move.from()))
             : move.to();
}

// The index of the position after the run of captures on one square that the
// ply's move begins.
std::size_t EndOfRun(const std::vector<Move>& line, std::size_t ply) {
  std::size_t end = ply + 1;
  while (end < line.size() && line[end].to() == line[ply].to()) ++end;
  return end;
}

}  // namespace

std::optional<Spoils> FindSpoils(const Position& position,
                                 const std::vector<Move>& line, Side winner) {
  std::vector<Position> positions = {position};
  std::vector<int> balance = {0};
  const int before = MaterialBalance(position, winner);
  for (const Move move : line) {
    positions.push_back(positions.back().AfterStep(move));
    balance.push_back(MaterialBalance(positions.back(), winner) - before);
  }
  const int gain = balance.back();
  if (gain < kLeastGain) return std::nullopt;
  const auto winner_moves = [&](std::size_t i) {
    return positions[i].side_to_move() == winner;
  };
  // The least that is left after these from each ply on.
  std::vector<int> kept = balance;
  for (std::size_t i = kept.size() - 1; i-- > 0;) {
    kept[i] = kept[i + 1];
    if (i > 0 && winner_moves(i - 1)) kept[i] = std::min(kept[i], balance[i]);
    const bool answers_quiet =
        i > 1 && winner_moves(i) && balance[i - 1] == balance[i - 2];
    if (answers_quiet) {
      kept[i] = std::min(kept[i], balance[EndOfRun(line, i - 1)]);
    }
  }
  std::size_t ply = 0;
  while (!winner_moves(ply) || balance[ply + 1] <= balance[ply] ||
         5 * std::min(kept[ply + 1], balance[EndOfRun(line, ply)]) <
             kKeptOfFive * gain) {
    ++ply;
  }
  const Move move = line[ply];
  Spoils spoils;
  spoils.winner = winner;
  spoils.ply = ply;
  spoils.gain = gain;
  spoils.square = CapturedOn(move);
  spoils.kind = positions[ply].At(spoils.square).kind();
  spoils.promotes = move.is_promotion();
  spoils.start = spoils.promotes ? StartOf(line, ply, move.from())
                                 : StartOf(line, ply, spoils.square);
  // Shown as far as the gain is settled: what follows are even trades, or play
  // for more that the winner need not go in for, since nothing of its own
  // hangs.
  const auto quiet_from = [&](std::size_t i) {
    for (std::size_t k = i; k < std::min(i + 2, line.size()); ++k) {
      if (balance[k + 1] != balance[k]) return false;
    }
    return !positions[i].InCheck();
  };
  const auto may_stop = [&](std::size_t i) {
    return winner_moves(i) && balance[i] >= gain && !positions[i].InCheck() &&
           MostHanging(positions[i], winner) == 0;
  };
  std::size_t shown = ply + 1;
  while (
      shown < line.size() && !may_stop(shown) &&
      (std::abs(balance[shown] - gain) > kSmallChange || !quiet_from(shown))) {
    ++shown;
  }
  spoils.shown_plies = shown;
  spoils.gain = balance[shown];
  return spoils;
}

}  // namespace assay
