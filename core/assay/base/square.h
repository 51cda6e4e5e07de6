// Squares, files and ranks.
//
// Squares are numbered a1 = 0, b1 = 1, ... h8 = 63. Files and ranks are
// numbered from 0 in code; texts and definitions count ranks from 1, from the
// side's own first rank: RelativeRank() is that number less one.
#ifndef ASSAY_BASE_SQUARE_H_
#define ASSAY_BASE_SQUARE_H_

#include <cstdint>
#include <string>
#include <string_view>

#include "assay/base/side.h"

namespace assay {

// clang-format off
enum Square : std::uint8_t {
  kA1, kB1, kC1, kD1, kE1, kF1, kG1, kH1,
  kA2, kB2, kC2, kD2, kE2, kF2, kG2, kH2,
  kA3, kB3, kC3, kD3, kE3, kF3, kG3, kH3,
  kA4, kB4, kC4, kD4, kE4, kF4, kG4, kH4,
  kA5, kB5, kC5, kD5, kE5, kF5, kG5, kH5,
  kA6, kB6, kC6, kD6, kE6, kF6, kG6, kH6,
  kA7, kB7, kC7, kD7, kE7, kF7, kG7, kH7,
  kA8, kB8, kC8, kD8, kE8, kF8, kG8, kH8,
  kNoSquare,
};
// clang-format on

inline constexpr int kSquares = 64;

constexpr Square MakeSquare(int file, int rank) {
  return static_cast<Square>(rank * 8 + file);
}
constexpr int FileOf(Square square) { return square & 7; }
constexpr int RankOf(Square square) { return square >> 3; }

// 0 on the side's own first rank, 7 on its promotion rank.
constexpr int RelativeRank(Side side, Square square) {
  return side == Side::kWhite ? RankOf(square) : 7 - RankOf(square);
}

// The same square seen from the other side: e2 <-> e7.
constexpr Square FlipRank(Square square) {
  return static_cast<Square>(square ^ 56);
}
// The same square on the other wing: b1 <-> g1.
constexpr Square FlipFile(Square square) {
  return static_cast<Square>(square ^ 7);
}
// The square as the side sees it: itself for White, FlipRank() for Black.
constexpr Square Relative(Side side, Square square) {
  return side == Side::kWhite ? square : FlipRank(square);
}

// True for light squares (b1, h1, a8).
constexpr bool IsLight(Square square) {
  return ((FileOf(square) + RankOf(square)) & 1) != 0;
}

// King moves between two squares on an empty board.
constexpr int KingDistance(Square a, Square b) {
  const int files =
      FileOf(a) > FileOf(b) ? FileOf(a) - FileOf(b) : FileOf(b) - FileOf(a);
  const int ranks =
      RankOf(a) > RankOf(b) ? RankOf(a) - RankOf(b) : RankOf(b) - RankOf(a);
  return files > ranks ? files : ranks;
}

// "e4"; "-" for kNoSquare.
std::string ToString(Square square);

// The square of "e4"; kNoSquare for anything else.
Square ParseSquare(std::string_view text);

}  // namespace assay

#endif  // ASSAY_BASE_SQUARE_H_
