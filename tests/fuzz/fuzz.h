// What the fuzz targets share. A target takes any bytes and stops where
// something that always holds does not.
#ifndef ASSAY_TESTS_FUZZ_FUZZ_H_
#define ASSAY_TESTS_FUZZ_FUZZ_H_

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "assay/rules/movegen.h"
#include "assay/rules/position.h"

namespace assay::fuzz {

// The fuzzer keeps the input that led here.
inline void Require(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "does not hold: %s\n", what);
  std::abort();
}

// Bytes as a stream of choices; zeros when they have run out.
class Choices {
 public:
  Choices(const std::uint8_t* data, std::size_t size)
      : data_(data), left_(size) {}

  // Below `count`, which is at most 256.
  std::size_t Below(std::size_t count) {
    if (left_ == 0) return 0;
    --left_;
    return *data_++ % count;
  }
  bool done() const { return left_ == 0; }
  // What no choice has taken.
  std::string_view Rest() const {
    return {reinterpret_cast<const char*>(data_), left_};
  }

 private:
  const std::uint8_t* data_;
  std::size_t left_;
};

// A position that can be played from: pieces where the bytes say, or the
// initial one, and some moves from there.
inline Position AnyPosition(Choices& choices) {
  ParsedPosition parsed;
  parsed.board.fill(Piece());
  const std::size_t pieces = choices.Below(33);
  const auto put = [&](Side side, PieceKind kind) {
    parsed.board[choices.Below(kSquares)] = Piece(side, kind);
  };
  for (std::size_t i = 0; i < pieces; ++i) {
    const Side side = choices.Below(2) == 0 ? Side::kWhite : Side::kBlack;
    put(side, static_cast<PieceKind>(choices.Below(5)));  // all but the king
  }
  put(Side::kWhite, PieceKind::kKing);
  put(Side::kBlack, PieceKind::kKing);
  if (choices.Below(2) == 1) parsed.side_to_move = Side::kBlack;
  const std::optional<Position> made = Position::FromParsed(parsed);
  Position position = made.has_value() ? *made : Position::Initial();
  for (std::size_t ply = choices.Below(64); ply > 0; --ply) {
    MoveList moves;
    LegalMoves(position, moves);
    if (moves.size() == 0) break;
    position = position.After(moves[choices.Below(moves.size())]);
  }
  return position;
}

}  // namespace assay::fuzz

#endif  // ASSAY_TESTS_FUZZ_FUZZ_H_
