// Sets of squares as 64-bit words.
//
// Bit 0 is a1, bit 7 is h1, bit 63 is h8:
//
//     8 | 56 57 58 59 60 61 62 63
//     7 | 48 .                 55
//     . |
//     2 |  8  9 10 11 12 13 14 15
//     1 |  0  1  2  3  4  5  6  7
//         a  b  c  d  e  f  g  h
//
// Functions named for a side ("Ahead", "Forward") look towards that side's
// promotion rank.
#ifndef ASSAY_BASE_BITBOARD_H_
#define ASSAY_BASE_BITBOARD_H_

#include <cstdint>

#include "assay/base/cpu.h"
#include "assay/base/side.h"
#include "assay/base/square.h"

namespace assay {

using Bitboard = std::uint64_t;

inline constexpr Bitboard kEmptySet = 0;
inline constexpr Bitboard kAllSquares = ~Bitboard{0};
inline constexpr Bitboard kFileA = 0x0101010101010101ULL;
inline constexpr Bitboard kFileH = kFileA << 7;
inline constexpr Bitboard kRank1 = 0xFFULL;
inline constexpr Bitboard kLightSquares = 0x55AA55AA55AA55AAULL;
inline constexpr Bitboard kDarkSquares = ~kLightSquares;

constexpr Bitboard Bit(Square square) { return Bitboard{1} << square; }
constexpr bool Contains(Bitboard set, Square square) {
  return ((set >> square) & 1U) != 0;
}
// All squares of the square's colour.
constexpr Bitboard ColourOf(Square square) {
  return IsLight(square) ? kLightSquares : kDarkSquares;
}
constexpr Bitboard FileMask(int file) { return kFileA << file; }
constexpr Bitboard RankMask(int rank) { return kRank1 << (8 * rank); }
// Rank 0 is the side's own first rank.
constexpr Bitboard RelativeRankMask(Side side, int rank) {
  return RankMask(side == Side::kWhite ? rank : 7 - rank);
}
constexpr bool HasMany(Bitboard set) { return (set & (set - 1)) != 0; }

// The number of squares in the set.
inline int PopCount(Bitboard set) { return static_cast<int>(CountBits(set)); }

// The lowest-numbered square of a set that is not empty.
inline Square First(Bitboard set) {
  return static_cast<Square>(__builtin_ctzll(set));
}
// The highest-numbered square of a set that is not empty.
inline Square Last(Bitboard set) {
  return static_cast<Square>(63 - __builtin_clzll(set));
}
// Removes the lowest-numbered square and returns it.
inline Square PopFirst(Bitboard& set) {
  const Square square = First(set);
  set &= set - 1;
  return square;
}

constexpr Bitboard North(Bitboard set) { return set << 8; }
constexpr Bitboard South(Bitboard set) { return set >> 8; }
constexpr Bitboard East(Bitboard set) { return (set & ~kFileH) << 1; }
constexpr Bitboard West(Bitboard set) { return (set & ~kFileA) >> 1; }

// One rank towards the side's promotion rank.
constexpr Bitboard Forward(Side side, Bitboard set) {
  return side == Side::kWhite ? North(set) : South(set);
}

// The squares that pawns of the side on `pawns` attack.
constexpr Bitboard PawnAttacks(Side side, Bitboard pawns) {
  const Bitboard ahead = Forward(side, pawns);
  return East(ahead) | West(ahead);
}

// The set with every square ahead of it on its file, itself included.
constexpr Bitboard FillForward(Side side, Bitboard set) {
  if (side == Side::kWhite) {
    set |= set << 8;
    set |= set << 16;
    return set | (set << 32);
  }
  set |= set >> 8;
  set |= set >> 16;
  return set | (set >> 32);
}

// The squares ahead of each square of the set on its file: the front span.
constexpr Bitboard FrontSpan(Side side, Bitboard set) {
  return Forward(side, FillForward(side, set));
}
// The squares behind each square of the set on its file: the rear span.
constexpr Bitboard RearSpan(Side side, Bitboard set) {
  return FrontSpan(Other(side), set);
}
// All squares of the files that the set touches.
constexpr Bitboard FillFiles(Bitboard set) {
  return FillForward(Side::kWhite, set) | FillForward(Side::kBlack, set);
}
// The set and its neighbours on adjacent files of the same rank.
constexpr Bitboard Neighbours(Bitboard set) { return East(set) | West(set); }

// The set seen from the other side: ranks reversed.
constexpr Bitboard FlipRanks(Bitboard set) {
  Bitboard flipped = 0;
  for (int rank = 0; rank < 8; ++rank) {
    flipped |= ((set >> (8 * rank)) & kRank1) << (8 * (7 - rank));
  }
  return flipped;
}

// Ranges over the squares of a set, lowest-numbered first:
//   for (Square s : Each(set)) ...
class Each {
 public:
  explicit Each(Bitboard set) : set_(set) {}
  class Iterator {
   public:
    explicit Iterator(Bitboard set) : set_(set) {}
    Square operator*() const { return First(set_); }
    Iterator& operator++() {
      set_ &= set_ - 1;
      return *this;
    }
    bool operator!=(const Iterator& other) const { return set_ != other.set_; }

   private:
    Bitboard set_;
  };
  Iterator begin() const { return Iterator(set_); }
  Iterator end() const { return Iterator(0); }

 private:
  Bitboard set_;
};

}  // namespace assay

#endif  // ASSAY_BASE_BITBOARD_H_
